import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { sheetMessages } from "../../messages/sheet.ts";
import { type PadKey, type PadKind, padKeys, pressKey } from "./pad-keys.ts";

interface Props {
  /** Gives the fields back to the device's own keyboard. */
  readonly onGiveUp: () => void;
}

/**
 * Large keys for numbers, at the foot of the window while a field with `data-pad` has the focus. The focus stays in the field, and the
 * field is scrolled to where the keys do not hide it.
 */
export function NumberPad({ onGiveUp }: Props): VNode | null {
  const [kind, setKind] = useState<PadKind | undefined>(undefined);
  const field = useRef<HTMLInputElement | undefined>(undefined);
  const pad = useRef<HTMLDivElement>(null);

  useEffect(() => {
    const look = (): void => {
      const at = document.activeElement;
      if (pad.current?.contains(at)) return;
      const found = at instanceof HTMLInputElement ? padKindOf(at) : undefined;
      field.current = found === undefined ? undefined : (at as HTMLInputElement);
      setKind(found);
    };
    // When the focus moves on, it is nowhere for a moment.
    const lookSoon = (): void => void setTimeout(look);
    // Before the focus comes: the device's keyboard looks at the field then.
    const quieten = (): void => keepKeyboardDown(true);
    quieten();
    document.addEventListener("pointerdown", quieten, { capture: true });
    document.addEventListener("focusin", look);
    document.addEventListener("focusout", lookSoon);
    look();
    return () => {
      keepKeyboardDown(false);
      document.removeEventListener("pointerdown", quieten, { capture: true });
      document.removeEventListener("focusin", look);
      document.removeEventListener("focusout", lookSoon);
    };
  }, []);

  useEffect(() => {
    document.documentElement.classList.toggle("has-pad", kind !== undefined);
    if (kind !== undefined) field.current?.parentElement?.parentElement?.scrollIntoView({ block: "nearest" });
    return () => document.documentElement.classList.remove("has-pad");
  }, [kind, field.current]);

  if (kind === undefined) return null;
  const press = (key: string): void => {
    if (field.current !== undefined) pressKey(field.current, key);
  };
  const fields = [...document.querySelectorAll<HTMLInputElement>("input[data-pad]")];
  const following = field.current === undefined ? undefined : fields[fields.indexOf(field.current) + 1];
  const goOn = (): void => {
    keepKeyboardDown(true);
    if (following !== undefined) {
      following.focus();
      return;
    }
    // What Enter does in a last field, the field itself knows.
    field.current?.dispatchEvent(
      new KeyboardEvent("keydown", { key: "Enter", bubbles: true, cancelable: true }),
    );
    field.current?.blur();
    setKind(undefined);
  };
  const giveUp = (): void => {
    // Before the field is entered anew, and not when this is taken away: the device's keyboard looks at the field then.
    keepKeyboardDown(false);
    onGiveUp();
  };
  const { rows, beside } = padKeys(kind, sheetMessages.pad.decimal);
  const keyFor = ({ key, text, name }: PadKey): VNode => (
    <button
      key={key}
      class={`number-pad__key${/^\d$/.test(key) ? "" : " number-pad__key--other"}`}
      type="button"
      aria-label={name === undefined ? undefined : sheetMessages.pad[name]}
      onClick={() => press(key)}
    >
      {text}
    </button>
  );
  return (
    <aside aria-label={sheetMessages.pad.name}>
      <div
        ref={pad}
        class="number-pad screen-only"
        role="toolbar"
        aria-label={sheetMessages.pad.name}
        // The field keeps the focus.
        onPointerDown={(event) => event.preventDefault()}
      >
        <div class="number-pad__rows">
          {rows.map((key, i) => (key === undefined ? <span key={`none-${i + 1}`} /> : keyFor(key)))}
        </div>
        <div class="number-pad__beside">
          <button
            class="number-pad__key number-pad__key--other"
            type="button"
            aria-label={sheetMessages.pad.erase}
            onClick={() => press("erase")}
          >
            <svg viewBox="0 0 32 24" aria-hidden="true">
              <path d="M11 4h17v16H11l-8-8zM15 9l7 7M22 9l-7 7" />
            </svg>
          </button>
          {beside.map(keyFor)}
          <button class="number-pad__key number-pad__next" type="button" onClick={goOn}>
            {following === undefined ? sheetMessages.pad.done : sheetMessages.pad.next}
          </button>
        </div>
        <button class="number-pad__key number-pad__keyboard" type="button" onClick={giveUp}>
          {sheetMessages.pad.keyboard}
        </button>
      </div>
    </aside>
  );
}

function padKindOf({ dataset }: HTMLInputElement): PadKind | undefined {
  const { pad } = dataset;
  return pad === "number" || pad === "age" || pad === "sum" ? pad : undefined;
}

function keepKeyboardDown(down: boolean): void {
  for (const field of document.querySelectorAll<HTMLInputElement>("input[data-pad]")) {
    field.inputMode = down ? "none" : field.dataset.pad === "age" ? "text" : "decimal";
  }
}
