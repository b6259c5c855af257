// Reading a code with the camera.
import { decodeQR } from "qr/decode.js";

const OFTEN = 200; // milliseconds between two looks
const SIDE = 720; // points of the longer side of the picture that is looked at

export function canScan(): boolean {
  return navigator.mediaDevices?.getUserMedia !== undefined;
}

/** Show the camera and tell every code that it sees, until the function that is returned is
 * called. Throws where the camera cannot be used. */
export async function scan(video: HTMLVideoElement, seen: (text: string) => void): Promise<() => void> {
  const camera = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
  video.srcObject = camera;
  await video.play();
  const canvas = document.createElement("canvas");
  const pen = canvas.getContext("2d", { willReadFrequently: true });
  const timer = window.setInterval(() => {
    const text = pen && codeIn(video, canvas, pen);
    if (text) seen(text);
  }, OFTEN);
  return () => {
    window.clearInterval(timer);
    camera.getTracks().forEach((track) => track.stop());
    video.srcObject = null;
  };
}

/** The code in what the camera sees now; empty where there is none. */
function codeIn(video: HTMLVideoElement, canvas: HTMLCanvasElement, pen: CanvasRenderingContext2D): string {
  const { videoWidth: width, videoHeight: height } = video;
  if (!width || !height) return "";
  const smaller = Math.min(1, SIDE / Math.max(width, height));
  canvas.width = Math.round(width * smaller);
  canvas.height = Math.round(height * smaller);
  pen.drawImage(video, 0, 0, canvas.width, canvas.height);
  try {
    return decodeQR(pen.getImageData(0, 0, canvas.width, canvas.height));
  } catch {
    return ""; // nothing that can be read, as in most pictures
  }
}
