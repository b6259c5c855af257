// Pictures by WebGL, with soft shadows on the floor.
import {
  Color,
  DirectionalLight,
  HemisphereLight,
  type InstancedMesh,
  type Material,
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
import { edgeOf, figureOf, kindOf, matrixOf, type KindOfBalloon, type Manner } from "./meshes";
import { mixed, PICKED_COLOUR, round, type Frame, type Painter, type Subject } from "./painter";

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
  private subject: Subject;
  private bodies: readonly Body[] = [];
  private figure = new Mesh();
  private kinds: readonly KindOfBalloon[] = [];
  private matrices: readonly Matrix4[] = [];
  private reach = 1; // how far the piece goes from the middle of the floor
  private lowest = 0; // of the piece as it lies
  private told = ""; // what was filled in last
  private coloured: Frame["colours"] = null;

  constructor(subject: Subject, bodies: readonly Body[]) {
    const { canvas, scene } = this;
    const context = canvas.getContext("webgl2", { antialias: true, alpha: true, powerPreference: "low-power" });
    if (!context) throw new Error("no WebGL");
    this.renderer = new WebGLRenderer({ canvas, context, antialias: true, alpha: true });
    Object.assign(this.renderer.shadowMap, { enabled: true, type: PCFShadowMap, autoUpdate: false });
    this.floor = new Mesh(new PlaneGeometry(6, 6), new ShadowMaterial({ opacity: 0.22 }));
    this.floor.receiveShadow = true;
    this.sun.castShadow = true;
    this.sun.shadow.mapSize.set(SHADOW_POINTS, SHADOW_POINTS);
    this.sun.shadow.radius = 6;
    scene.add(this.floor, new HemisphereLight("#ffffff", "#b9b2a6", 2.1), this.sun, this.sun.target);
    this.subject = subject;
    this.take(subject, bodies);
  }

  take(subject: Subject, bodies: readonly Body[]): void {
    this.clear();
    this.subject = subject;
    this.bodies = bodies;
    this.reach = bodies.reduce((reach, body) => Math.max(reach, Math.hypot(...body.middle)), 1) * 1.3;
    this.lowest = bodies.reduce((lowest, body) => Math.min(lowest, body.middle[2] - body.radius), 0);
    this.floor.scale.set(this.reach, this.reach, 1);
    this.figure = figureOf(subject.person);
    const counts = subject.piece.balloons.map(() => 0);
    for (const body of bodies) counts[body.balloon] = (counts[body.balloon] ?? 0) + 1;
    this.kinds = subject.piece.balloons.map((balloon, kind) => kindOf(balloon, counts[kind] ?? 0));
    this.matrices = bodies.map(matrixOf);
    this.lit();
    this.scene.add(this.figure, ...this.meshes());
    this.told = "";
  }

  private meshes(): InstancedMesh[] {
    return this.kinds.flatMap((kind) => Object.values(kind.meshes));
  }

  /** Give back what the piece before took. */
  private clear(): void {
    this.scene.remove(this.figure, ...this.meshes());
    this.figure.geometry.dispose();
    for (const mesh of this.meshes()) {
      mesh.dispose();
      (mesh.material as Material).dispose();
    }
    for (const kind of this.kinds) for (const shape of [kind.fine, kind.coarse]) shape.dispose();
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
    if (now !== this.told || frame.colours !== this.coloured) {
      this.settle(frame);
      this.fill(frame);
      this.told = now;
      this.coloured = frame.colours;
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
    const { sun, reach } = this;
    Object.assign(sun.shadow.camera, { left: -reach, right: reach, top: reach, bottom: -reach, near: 0.1, far: reach * 6 });
    sun.shadow.camera.updateProjectionMatrix();
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
    for (const mesh of this.meshes()) {
      mesh.instanceMatrix.needsUpdate = true;
      if (mesh.instanceColor) mesh.instanceColor.needsUpdate = true;
    }
    this.renderer.shadowMap.needsUpdate = !frame.near;
  }

  private colourOf(body: Body, look: Look, frame: Frame): Color {
    const own = frame.colours?.get(body) ?? this.subject.piece.balloons[body.balloon]?.colour ?? "#888888";
    if (look === "picked") return new Color(PICKED_COLOUR);
    return new Color(look === "done" || look === "clear" ? mixed(own, frame.ground.paper, frame.ground.pale) : own);
  }
}

/** Throws where the browser has no WebGL. */
export function webglPainter(subject: Subject, bodies: readonly Body[]): Painter {
  return new WebglPainter(subject, bodies);
}
