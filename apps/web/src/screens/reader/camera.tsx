import type { VNode } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { scanCodes } from "../../effects/scan-code.ts";
import { readerMessages } from "../../messages/reader.ts";

interface Props {
  readonly onCode: (text: string) => void;
  readonly onFail: () => void;
}

/** What the camera sees, until it has seen the code or is closed. */
export function Camera({ onCode, onFail }: Props): VNode {
  const video = useRef<HTMLVideoElement>(null);
  const tell = useRef(onCode);
  tell.current = onCode;
  useEffect(() => {
    let stop = (): void => undefined;
    let isOver = false;
    if (video.current !== null) {
      scanCodes(video.current, (text) => tell.current(text)).then(
        (end) => {
          stop = end;
          if (isOver) stop();
        },
        () => !isOver && onFail(),
      );
    }
    return () => {
      isOver = true;
      stop();
    };
  }, []);
  return (
    <div>
      <p role="status">{readerMessages.scanning}</p>
      <video ref={video} class="reader__camera" muted playsInline aria-label={readerMessages.scan} />
    </div>
  );
}
