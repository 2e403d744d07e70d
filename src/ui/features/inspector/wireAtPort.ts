import { type Design, wireId } from "../../../design/design.ts";

/** Id of the wire on a port, if one is joined. */
export function wireAtPort(design: Design, part: string, port: string): string | undefined {
  const wire = design.wires.find(
    ({ from, to }) => (from[0] === part && from[1] === port) || (to[0] === part && to[1] === port),
  );
  return wire ? wireId(wire) : undefined;
}
