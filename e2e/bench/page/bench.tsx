/**
 * Mounts and pans the canvas and, beside it, the canvas library with default nodes and default options,
 * in one page and one session, so that what is compared is the same machine in the same minute.
 */
import { type Edge, type Node, ReactFlow } from "@xyflow/react";
import { Tooltip } from "radix-ui";
import type { ReactNode } from "react";
import { createRoot } from "react-dom/client";
import { type Design, wireId } from "../../../src/design/design.ts";
import { useApp } from "../../../src/store/app.ts";
import { boxesOf } from "../../../src/ui/canvas/boxes.ts";
import { Canvas } from "../../../src/ui/canvas/Canvas.tsx";
import { Hatches } from "../../../src/ui/canvas/Hatches.tsx";
import { canvasView } from "../../../src/ui/canvas/view.ts";
import { largeDesign } from "../../../tests/bench/largeDesign.ts";
import "@xyflow/react/dist/style.css";
import "../../../src/ui/kit/theme.css";

export type Timing = {
  /** From the call to render to the end of the first frame that shows it [ms]. */
  readonly mountMs: number;
  /** One frame of a pan each [ms]. */
  readonly frameMs: readonly number[];
};

export type CanvasTiming = Timing & {
  /** Frames of a pan where parts are read one by one [ms]. */
  readonly nearFrameMs: readonly number[];
  /** The longest stop of the picture when it jumps from the whole to a crowd of parts, and back [ms]. */
  readonly jumpMs: number;
  readonly shown: { readonly whole: number; readonly near: number };
};

declare global {
  // biome-ignore lint/style/useConsistentTypeDefinitions: only an interface adds to one that exists
  interface Window {
    benchPlain: (parts: number) => Promise<Timing>;
    benchCanvas: (parts: number) => Promise<CanvasTiming>;
  }
}

const PAN_FRAMES = 60;

window.benchPlain = (count) => {
  const design = largeDesign(count);
  const nodes: Node[] = design.parts.map((part) => ({
    id: part.id,
    position: { x: part.at[0], y: part.at[1] },
    data: { label: part.label },
  }));
  const edges: Edge[] = design.wires.map((wire) => ({
    id: wireId(wire),
    source: wire.from[0],
    target: wire.to[0],
  }));
  return mounted(<ReactFlow defaultNodes={nodes} defaultEdges={edges} />, async (mountMs) => ({
    mountMs,
    frameMs: await pan(),
  }));
};

window.benchCanvas = (count) => {
  // Nothing of it has been seen before, so nothing is remembered of it.
  const design: Design = structuredClone(largeDesign(count));
  useApp.getState().openDesign(design);
  const canvas = (
    <Tooltip.Provider>
      <Canvas />
      <Hatches />
    </Tooltip.Provider>
  );
  return mounted(canvas, async (mountMs) => {
    const frameMs = await pan();
    const whole = cards();
    const crowd = { x: 0, y: 0, width: 6000, height: 2400 };
    const jumpMs = await longestFrame(async () => {
      canvasView()?.show(crowd);
      await frames(30);
      canvasView()?.fit();
      await frames(10);
    });
    const [first] = boxesOf(design);
    if (first) canvasView()?.show({ ...first, width: 1200, height: 700 });
    await frames(30);
    const nearFrameMs = await pan();
    return { mountMs, frameMs, nearFrameMs, jumpMs, shown: { whole, near: cards() } };
  });
};

const cards = () => document.querySelectorAll(".react-flow__node").length;

async function mounted<T>(element: ReactNode, measure: (mountMs: number) => Promise<T>): Promise<T> {
  const stage = document.getElementById("stage");
  if (!stage) throw new Error("no stage");
  const root = createRoot(stage);
  await frames(3);
  const start = performance.now();
  root.render(element);
  await frames(2);
  const mountMs = performance.now() - start;
  await frames(20);
  const result = await measure(mountMs);
  root.unmount();
  await frames(10);
  return result;
}

/** Drags the empty ground, one move in each frame, and takes the time of each frame. */
async function pan(): Promise<number[]> {
  const pane = document.querySelector(".react-flow__pane");
  if (!pane) throw new Error("no pane");
  const box = pane.getBoundingClientRect();
  let x = box.left + box.width * 0.6;
  let y = box.top + box.height * 0.6;
  const send = (type: string, target: EventTarget) =>
    target.dispatchEvent(
      new MouseEvent(type, {
        bubbles: true,
        cancelable: true,
        clientX: x,
        clientY: y,
        button: 0,
        buttons: 1,
        view: window,
      }),
    );
  send("mousedown", pane);
  const times: number[] = [];
  for (let i = 0; i < PAN_FRAMES; i++) {
    x -= i < PAN_FRAMES / 2 ? 9 : -9;
    y -= 3;
    const start = performance.now();
    send("mousemove", window);
    await frames(1);
    times.push(performance.now() - start);
  }
  send("mouseup", window);
  return times;
}

async function longestFrame(work: () => Promise<void>): Promise<number> {
  let longest = 0;
  let last = performance.now();
  let isRunning = true;
  const watch = () => {
    const now = performance.now();
    longest = Math.max(longest, now - last);
    last = now;
    if (isRunning) requestAnimationFrame(watch);
  };
  requestAnimationFrame(watch);
  await work();
  isRunning = false;
  return longest;
}

/** Waits for the end of so many frames: what was asked for is then painted. */
async function frames(count: number): Promise<void> {
  for (let i = 0; i < count; i++) {
    await new Promise<void>((resolve) => {
      requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => resolve();
        channel.port2.postMessage(null);
      });
    });
  }
}
