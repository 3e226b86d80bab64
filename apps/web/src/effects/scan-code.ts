interface Detector {
  readonly detect: (source: HTMLVideoElement) => Promise<readonly { readonly rawValue: string }[]>;
}
type DetectorClass = new (options: { readonly formats: readonly string[] }) => Detector;

function detectorClass(): DetectorClass | undefined {
  return (globalThis as { readonly BarcodeDetector?: DetectorClass }).BarcodeDetector;
}

/** Whether this browser can read a code by its camera; where it cannot, the code is typed. */
export function canScan(): boolean {
  return detectorClass() !== undefined && navigator.mediaDevices?.getUserMedia !== undefined;
}

const everyMs = 200;

/** Shows the camera in `video` and tells every code it sees, until the function that it returns is called. Fails without a camera. */
export async function scanCodes(video: HTMLVideoElement, tell: (text: string) => void): Promise<() => void> {
  const Detector = detectorClass();
  if (Detector === undefined) throw new Error("this browser reads no codes");
  const stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
  video.srcObject = stream;
  await video.play();
  const detector = new Detector({ formats: ["qr_code"] });
  const looking = setInterval(() => {
    // A frame that cannot be read is followed by another one.
    detector.detect(video).then(
      (codes) => {
        for (const { rawValue } of codes) tell(rawValue);
      },
      () => undefined,
    );
  }, everyMs);
  return () => {
    clearInterval(looking);
    for (const track of stream.getTracks()) track.stop();
  };
}
