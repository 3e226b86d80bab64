interface Detector {
  readonly detect: (source: HTMLVideoElement) => Promise<readonly { readonly rawValue: string }[]>;
}
type DetectorClass = (new (options: {
  readonly formats: string[];
}) => Detector) & {
  readonly getSupportedFormats: () => Promise<readonly string[]>;
};

/** Whether there can be a camera here at all: a page that came over a plain network has none. Without one the code is typed. */
export function canScan(): boolean {
  return globalThis.navigator?.mediaDevices?.getUserMedia !== undefined;
}

const everyMs = 200;

/** Shows the camera in `video` and tells every code it sees, until the function that it returns is called. Fails without a camera. */
export async function scanCodes(video: HTMLVideoElement, tell: (text: string) => void): Promise<() => void> {
  const stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
  const stop = (): void => {
    for (const track of stream.getTracks()) track.stop();
  };
  try {
    video.srcObject = stream;
    await video.play();
    const detector = await createDetector();
    let isLooking = false;
    const looking = setInterval(() => {
      // A slow device looks at fewer frames instead of falling behind.
      if (isLooking) return;
      isLooking = true;
      detector
        .detect(video)
        .then((codes) => {
          for (const { rawValue } of codes) tell(rawValue);
        })
        // A frame that cannot be read is followed by another one.
        .catch(() => undefined)
        .finally(() => {
          isLooking = false;
        });
    }, everyMs);
    return () => {
      clearInterval(looking);
      stop();
    };
  } catch (error) {
    stop();
    throw error;
  }
}

/** The browser's own reader of codes where it has one, which costs least; ours elsewhere. */
async function createDetector(): Promise<Detector> {
  const formats = ["qr_code"];
  const Native = (globalThis as { readonly BarcodeDetector?: DetectorClass }).BarcodeDetector;
  if (Native !== undefined && (await Native.getSupportedFormats()).includes("qr_code"))
    return new Native({ formats });
  const { BarcodeDetector } = await import("qr/decode.js");
  return new BarcodeDetector({ formats: ["qr_code"] });
}
