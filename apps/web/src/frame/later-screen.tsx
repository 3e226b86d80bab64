import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { messages } from "../messages/index.ts";
import type { LaterScreenId } from "../state/screens.ts";
import type { Screen, ScreenProps } from "./screen-props.ts";

interface Props extends ScreenProps {
  readonly screen: LaterScreenId;
  readonly load: (screen: LaterScreenId) => Promise<Screen>;
  readonly onReload: () => void;
}

/** A screen that comes when it is asked for, and a word while it is on its way or where it cannot be had. */
export function LaterScreen({ screen, load, onReload, ...props }: Props): VNode {
  const [loaded, setLoaded] = useState<{ readonly Loaded: Screen } | "failed" | undefined>(undefined);
  useEffect(() => {
    let wanted = true;
    setLoaded(undefined);
    load(screen).then(
      (Loaded) => wanted && setLoaded({ Loaded }),
      () => wanted && setLoaded("failed"),
    );
    return () => {
      wanted = false;
    };
  }, [screen, load]);
  if (loaded === undefined) return <p role="status">{messages.screenComing}</p>;
  if (loaded === "failed") {
    return (
      <div class="sheet__missing" role="alert">
        <p>{messages.screenMissing}</p>
        <button class="button" type="button" onClick={onReload}>
          {messages.loadAgain}
        </button>
      </div>
    );
  }
  return <loaded.Loaded {...props} />;
}
