import type { ChildReport } from "@steelyard/core/child";
import { equipmentBlock, signsBlock } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { language } from "../../messages/language.ts";
import { faceOfEquipment, faceOfSign, sharedHeightAge } from "./lookup-face.ts";
import { LookupLine } from "./lookup-line.tsx";

interface Props {
  readonly group: "equipment" | "signs";
  readonly lookups: Pick<ChildReport, "equipment" | "signs">;
  /** The ids to show; all where absent. */
  readonly only?: readonly string[] | undefined;
  readonly printing: boolean;
}

/** All equipment or all normal signs of one child, with what holds for many of the lines once above them. */
export function LookupLines({ group, lookups, only, printing }: Props): VNode {
  const isEquipment = group === "equipment";
  const intro = isEquipment ? equipmentBlock(language?.lookup).lines : signsBlock(language?.lookup).lines;
  const heightAge = sharedHeightAge(lookups[group]);
  const faces = isEquipment ? lookups.equipment.map(faceOfEquipment) : lookups.signs.map(faceOfSign);
  const shown = only === undefined ? faces : faces.filter(({ id }) => only.includes(id));
  return (
    <>
      {intro.map((sentence) => (
        <p key={sentence} class="problem-group__shared problem-group__shared--quiet">
          {sentence}
        </p>
      ))}
      {heightAge !== undefined && <p class="problem-group__shared">{heightAge}</p>}
      <ul>
        {shown.map((face) => (
          <li key={face.id}>
            <LookupLine face={face} printing={printing} />
          </li>
        ))}
      </ul>
    </>
  );
}
