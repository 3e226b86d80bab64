import { generate } from "lean-qr";
import type { VNode } from "preact";

const quietZone = 4;

/** A QR code, dark on white whatever the colours of the page are: cameras want it so. */
export function QrCode({ text, label }: { readonly text: string; readonly label: string }): VNode {
  const code = generate(text);
  let d = "";
  for (let y = 0; y < code.size; y++) {
    for (let x = 0; x < code.size; x++) if (code.get(x, y)) d += `M${x} ${y}h1v1h-1z`;
  }
  const side = code.size + 2 * quietZone;
  return (
    <svg
      class="qr-code"
      viewBox={`${-quietZone} ${-quietZone} ${side} ${side}`}
      role="img"
      aria-label={label}
      shape-rendering="crispEdges"
    >
      <rect class="qr-code__ground" x={-quietZone} y={-quietZone} width={side} height={side} />
      <path class="qr-code__dark" d={d} />
    </svg>
  );
}
