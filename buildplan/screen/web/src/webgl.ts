// Pictures by WebGL, with soft shadows on the floor.
import {
  Color,
  DirectionalLight,
  HemisphereLight,
  type Matrix4,
  Mesh,
  PCFShadowMap,
  PerspectiveCamera,
  PlaneGeometry,
  Scene,
  ShadowMaterial,
  Vector3,
  WebGLRenderer,
} from "three";
import type { Body, Look } from "./bodies";
import { VIEW_ANGLE } from "./camera";
import type { Page } from "./data";
import { edgeOf, figureOf, kindOf, matrixOf, type KindOfBalloon, type Manner } from "./meshes";
import { mixed, PICKED_COLOUR, round, type Frame, type Painter } from "./painter";

const SHADOW_POINTS = 1024;
const MANNERS: Readonly<Record<Exclude<Look, "gone">, Manner>> = { new: "solid", own: "solid", picked: "solid", done: "pale", clear: "clear" };

class WebglPainter implements Painter {
  readonly kind = "webgl";
  readonly canvas = document.createElement("canvas");
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new PerspectiveCamera((VIEW_ANGLE * 180) / Math.PI, 1, 0.05, 200);
  private readonly sun = new DirectionalLight("#ffffff", 1.9);
  private readonly floor: Mesh;
  private readonly figure: Mesh;
  private readonly kinds: readonly KindOfBalloon[];
  private readonly matrices: readonly Matrix4[];
  private readonly reach: number; // how far the piece goes from the middle of the floor
  private readonly lowest: number; // of the piece as it lies
  private told = ""; // what was filled in last

  constructor(
    private readonly page: Page,
    private readonly bodies: readonly Body[],
  ) {
    const { canvas, scene } = this;
    const context = canvas.getContext("webgl2", { antialias: true, alpha: true, powerPreference: "low-power" });
    if (!context) throw new Error("no WebGL");
    this.renderer = new WebGLRenderer({ canvas, context, antialias: true, alpha: true });
    Object.assign(this.renderer.shadowMap, { enabled: true, type: PCFShadowMap, autoUpdate: false });
    this.reach = Math.max(...bodies.map((body) => Math.hypot(...body.middle)), 1) * 1.3;
    this.lowest = Math.min(...bodies.map((body) => body.middle[2] - body.radius), 0);
    this.floor = new Mesh(new PlaneGeometry(this.reach * 6, this.reach * 6), new ShadowMaterial({ opacity: 0.22 }));
    this.floor.receiveShadow = true;
    this.figure = figureOf(page.person);
    this.kinds = page.piece.balloons.map((balloon, kind) => kindOf(balloon, bodies.filter((body) => body.balloon === kind).length));
    this.matrices = bodies.map(matrixOf);
    this.lit();
    scene.add(this.floor, this.figure, ...this.kinds.flatMap((kind) => Object.values(kind.meshes)));
  }

  paint(frame: Frame): void {
    const { renderer, camera, scene } = this;
    const { width, height, middle } = frame.from;
    renderer.setPixelRatio(Math.min(window.devicePixelRatio || 1, 2));
    renderer.setSize(width, height, false);
    if (frame.near) this.lightFromTheEye(frame);
    // the figure turns to the eye, and its shadow with it
    this.figure.rotation.y = round(frame.from);
    const now = [frame.looks.join(), frame.near, frame.seat.lying, frame.person && this.figure.rotation.y, frame.ground.paper].join("|");
    if (now !== this.told) {
      this.settle(frame);
      this.fill(frame);
      this.told = now;
    }
    camera.aspect = width / height;
    camera.setViewOffset(width, height, width / 2 - middle, 0, width, height);
    camera.position.set(...frame.from.eye);
    camera.up.set(...frame.from.up);
    camera.lookAt(...frame.from.about);
    camera.updateProjectionMatrix();
    renderer.render(scene, camera);
  }

  private lit(): void {
    const { sun, reach, scene } = this;
    sun.castShadow = true;
    sun.shadow.mapSize.set(SHADOW_POINTS, SHADOW_POINTS);
    sun.shadow.radius = 6;
    Object.assign(sun.shadow.camera, { left: -reach, right: reach, top: reach, bottom: -reach, near: 0.1, far: reach * 6 });
    scene.add(new HemisphereLight("#ffffff", "#b9b2a6", 2.1), sun, sun.target);
  }

  /** Near by the light comes with the eye, over its left shoulder, and throws no shadow. */
  private lightFromTheEye(frame: Frame): void {
    const { eye, about, right, up } = frame.from;
    const away = Math.hypot(eye[0] - about[0], eye[1] - about[1], eye[2] - about[2]);
    const at = new Vector3(...eye);
    at.addScaledVector(new Vector3(...up), away * 0.9).addScaledVector(new Vector3(...right), -away * 0.5);
    this.sun.position.copy(at);
    this.sun.target.position.set(...about);
  }

  /** The floor under the piece as it lies or stands, the light far off, and the person. */
  private settle(frame: Frame): void {
    const { floor, sun, reach } = this;
    const { lying } = frame.seat;
    sun.castShadow = !frame.near;
    floor.visible = !frame.near;
    floor.rotation.set(lying ? 0 : -Math.PI / 2, 0, 0);
    floor.position.set(0, lying ? 0 : -0.001, lying ? this.lowest : 0);
    this.figure.visible = frame.person;
    if (frame.near) return;
    sun.position.set(reach * 0.8, reach * (lying ? 0.7 : 1.8), reach * (lying ? 2 : 1.3));
    sun.target.position.set(0, lying ? reach / 3 : reach / 4, 0);
  }

  private fill(frame: Frame): void {
    const edged = frame.near || frame.looks.includes("done");
    for (const kind of this.kinds) {
      for (const mesh of Object.values(kind.meshes)) {
        mesh.count = 0;
        mesh.geometry = frame.near ? kind.fine : kind.coarse;
      }
    }
    this.bodies.forEach((body, i) => {
      const look = frame.looks[i] ?? "gone";
      const meshes = this.kinds[body.balloon]?.meshes;
      const matrix = this.matrices[i];
      if (look === "gone" || !meshes || !matrix) return;
      const mesh = meshes[MANNERS[look]];
      mesh.setMatrixAt(mesh.count, matrix);
      mesh.setColorAt(mesh.count, this.colourOf(body, look, frame));
      mesh.count += 1;
      if (edged && (look === "new" || look === "picked")) {
        meshes.edge.setMatrixAt(meshes.edge.count, edgeOf(matrix));
        meshes.edge.count += 1;
      }
    });
    for (const mesh of this.kinds.flatMap((kind) => Object.values(kind.meshes))) {
      mesh.instanceMatrix.needsUpdate = true;
      if (mesh.instanceColor) mesh.instanceColor.needsUpdate = true;
    }
    this.renderer.shadowMap.needsUpdate = !frame.near;
  }

  private colourOf(body: Body, look: Look, frame: Frame): Color {
    const own = this.page.piece.balloons[body.balloon]?.colour ?? "#888888";
    if (look === "picked") return new Color(PICKED_COLOUR);
    return new Color(look === "done" || look === "clear" ? mixed(own, frame.ground.paper, frame.ground.pale) : own);
  }
}

/** Throws where the browser has no WebGL. */
export function webglPainter(page: Page, bodies: readonly Body[]): Painter {
  return new WebglPainter(page, bodies);
}
