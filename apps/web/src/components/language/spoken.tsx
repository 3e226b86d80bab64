import type { VNode } from "preact";
import { useEffect, useMemo, useState } from "preact/hooks";
import { speak } from "../../messages/language.ts";
import { LanguageContext, type LanguageEffects, type LanguageTag } from "./language-context.ts";

interface Props {
  readonly effects: LanguageEffects;
  /** Made anew whenever the language changes, with its state kept. */
  readonly children: () => VNode;
}

/** Gives the page its language: the one chosen on this device, or that of the browser. English until it is there. */
export function Spoken({ effects, children }: Props): VNode {
  const [tag, setTag] = useState<LanguageTag>("en");
  const [missing, setMissing] = useState<LanguageTag | undefined>(undefined);
  const show = (wanted: LanguageTag): Promise<void> =>
    effects.load(wanted).then(
      (translation) => {
        speak(translation);
        effects.show(wanted);
        setMissing(undefined);
        setTag(wanted);
      },
      () => setMissing(wanted),
    );
  useEffect(() => {
    const wanted = effects.find();
    if (wanted !== "en") void show(wanted);
  }, [effects]);
  const choice = useMemo(
    () => ({
      tag,
      missing,
      choose: (wanted: LanguageTag): void => {
        effects.keep(wanted);
        void show(wanted);
      },
    }),
    [effects, tag, missing],
  );
  return <LanguageContext.Provider value={choice}>{children()}</LanguageContext.Provider>;
}
