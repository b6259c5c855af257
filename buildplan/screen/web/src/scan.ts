// Reading a code with the camera, where the browser has a reader of its own (W3C Shape Detection).

interface Reader {
  detect(from: HTMLVideoElement): Promise<readonly { rawValue: string }[]>;
}

type MakeReader = new (options: { formats: readonly string[] }) => Reader;

const OFTEN = 250; // milliseconds between two looks

function maker(): MakeReader | undefined {
  return (window as unknown as { BarcodeDetector?: MakeReader }).BarcodeDetector;
}

export function canScan(): boolean {
  return maker() !== undefined && navigator.mediaDevices?.getUserMedia !== undefined;
}

/** Show the camera and tell every code that it sees, until the function that is returned is
 * called. Throws where the camera cannot be used. */
export async function scan(video: HTMLVideoElement, seen: (text: string) => void): Promise<() => void> {
  const Made = maker();
  if (!Made) throw new Error("no reader");
  const reader = new Made({ formats: ["qr_code"] });
  const camera = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
  video.srcObject = camera;
  await video.play();
  const timer = window.setInterval(() => {
    reader.detect(video).then(
      (found) => found.forEach((one) => seen(one.rawValue)),
      () => undefined, // a picture that is not there yet
    );
  }, OFTEN);
  return () => {
    window.clearInterval(timer);
    camera.getTracks().forEach((track) => track.stop());
    video.srcObject = null;
  };
}
