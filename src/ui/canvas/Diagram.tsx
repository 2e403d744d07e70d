/**
 * A design drawn with its parts and wires, to be looked at and moved through. What its cards and wires tell, and
 * what hands do to them, comes from whoever shows it: the editor, or a case of practice.
 */
import {
  type AriaLabelConfig,
  type EdgeTypes,
  type NodeTypes,
  ReactFlow,
  type ReactFlowProps,
} from "@xyflow/react";
import { type ReactNode, useMemo, useRef } from "react";
import type { Design } from "../../design/design.ts";
import type { Selection } from "../../store/app.ts";
import { type Dragged, edgesOf, NOT_DRAGGED, nodesOf, type PartNode, type WireEdge } from "./flowItems.ts";
import { QuietAttribution } from "./QuietAttribution.tsx";
import type { Reveal } from "./useReveal.ts";
import { LEAST_ZOOM, MOST_ZOOM, type Viewport } from "./viewMath.ts";
import "@xyflow/react/dist/base.css";
import "./canvas.css";
import "./cards.css";
import "./wires.css";
import "./strip.css";

/**
 * What stands for a part and for a wire, and what is said of their keys. A constant of its module: the library takes
 * a new object for a new world (measured: three to seven times the work of a drag).
 */
export type DiagramLook = {
  readonly nodeTypes: NodeTypes;
  readonly edgeTypes: EdgeTypes;
  readonly ariaLabelConfig: Partial<AriaLabelConfig>;
  /** Large designs need it; but then keys must lead to what is out of view. */
  readonly onlyRenderVisibleElements: boolean;
};

/** What is said of the keys at a part and at a wire; the rest the announcer tells, in our own words. */
export function spokenAs(keys: { readonly part: string; readonly wire: string }): Partial<AriaLabelConfig> {
  return {
    "node.a11yDescription.default": "",
    "node.a11yDescription.keyboardDisabled": keys.part,
    "node.a11yDescription.ariaLiveMessage": () => "",
    "edge.a11yDescription.default": keys.wire,
  };
}

type Flow = ReactFlowProps<PartNode, WireEdge>;

/** What presses, keys and drags do; without any of it there is nothing to change. */
export type DiagramHand = Pick<
  Flow,
  | "snapToGrid"
  | "snapGrid"
  | "nodesDraggable"
  | "selectionKeyCode"
  | "selectionMode"
  | "multiSelectionKeyCode"
  | "selectionOnDrag"
  | "panOnDrag"
  | "onNodesChange"
  | "onEdgesChange"
  | "onNodeDragStart"
  | "onNodeDrag"
  | "onSelectionDragStart"
  | "onNodeClick"
  | "onNodeDoubleClick"
  | "onPaneClick"
>;

type Props = {
  readonly label: string;
  readonly look: DiagramLook;
  readonly design: Design;
  readonly selection: Selection;
  readonly start: Viewport;
  readonly onMove: NonNullable<Flow["onMove"]>;
  readonly hand: DiagramHand;
  /** Where cards are that are being dragged. */
  readonly dragged?: Dragged;
  /** The cards that are drawn. */
  readonly shown?: Reveal;
  /** What lies over or under the cards. */
  readonly children?: ReactNode;
};

export function Diagram(props: Props) {
  const { label, look, start, onMove, hand, children } = props;
  const { nodes, edges } = useItems(props);
  return (
    <ReactFlow<PartNode, WireEdge>
      aria-label={label}
      {...look}
      nodes={nodes}
      edges={edges}
      defaultViewport={start}
      minZoom={LEAST_ZOOM}
      maxZoom={MOST_ZOOM}
      elevateNodesOnSelect={false}
      // The library joins nothing: pulling a wire is a gesture of the editor’s own.
      nodesConnectable={false}
      edgesReconnectable={false}
      connectOnClick={false}
      deleteKeyCode={null}
      zoomOnDoubleClick={false}
      attributionPosition="bottom-right"
      onMove={onMove}
      {...hand}
    >
      {children}
      <QuietAttribution />
    </ReactFlow>
  );
}

function useItems({ design, selection, dragged = NOT_DRAGGED, shown = "all" }: Props) {
  const lastNodes = useRef<ReadonlyMap<string, PartNode>>(new Map());
  const lastEdges = useRef<ReadonlyMap<string, WireEdge>>(new Map());
  return useMemo(() => {
    const all = nodesOf({ design, selection, dragged, before: lastNodes.current });
    lastNodes.current = all;
    const nodes = shown === "all" ? all : new Map([...all].filter(([id]) => shown.has(id)));
    const edges = edgesOf({ design, selection, before: lastEdges.current, nodes });
    lastEdges.current = edges;
    return { nodes: [...nodes.values()], edges: [...edges.values()] };
  }, [design, selection, dragged, shown]);
}
