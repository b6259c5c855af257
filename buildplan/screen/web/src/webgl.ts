// Pictures by WebGL: one instanced mesh for each kind of balloon, soft shadows on the floor.
import {
  BackSide,
  Color,
  DirectionalLight,
  HemisphereLight,
  InstancedMesh,
  LatheGeometry,
  type Material,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  MeshPhongMaterial,
  PCFShadowMap,
  PerspectiveCamera,
  PlaneGeometry,
  Quaternion,
  Scene,
  ShadowMaterial,
  SphereGeometry,
  Vector2,
  Vector3,
  WebGLRenderer,
} from "three";
import type { Body, Look } from "./bodies";
import { VIEW_ANGLE } from "./camera";
import type { Balloon, Page } from "./data";
import { mixed, PERSON_COLOUR, PICKED_COLOUR, type Frame, type Painter } from "./painter";

// shininess, and the strength of the highlight, by eye
const FINISHES: Readonly<Record<string, readonly [number, number]>> = {
  standard: [70, 0.3],
  pearl: [30, 0.55],
  metallic: [110, 0.95],
  clear: [120, 0.8],
  matt: [4, 0.05],
};
// points of an outline left out, and points round a balloon: near by, and of the whole piece
const FINE = [1, 24] as const;
const COARSE = [3, 10] as const;
const CLEAR = 0.3; // how much is seen of what is seen through
const OUTLINE = 1.07;
const OUTLINE_COLOUR = "#15191e";
const UP = new Vector3(0, 1, 0);

function material(balloon: Balloon): MeshPhongMaterial {
  const [shininess, strength] = FINISHES[balloon.finish] ?? [70, 0.3];
  const bright = new Color("#ffffff").multiplyScalar(strength);
  const made = new MeshPhongMaterial({ shininess, specular: bright });
  if (balloon.finish === "metallic") made.specular.lerp(new Color(balloon.colour), 0.5);
  if (balloon.finish === "clear") {
    made.transparent = true;
    made.opacity = 0.5;
  }
  return made;
}

function shape(balloon: Balloon, [every, round]: readonly [number, number]): LatheGeometry {
  const outline = balloon.profile.filter((_, i) => i % every === 0);
  return new LatheGeometry(outline.map(([y, r]) => new Vector2(r, y)), round);
}

function matrixOf(body: Body): Matrix4 {
  const first = new Vector3(...body.first);
  const axis = new Vector3(...body.second).sub(first);
  const length = axis.length();
  const turn = new Quaternion().setFromUnitVectors(UP, axis.normalize());
  const across = body.radius * 2;
  return new Matrix4().compose(new Vector3(...body.middle), turn, new Vector3(across, length, across));
}

function personOf(page: Page): Mesh[] {
  const grey = new MeshPhongMaterial({ color: PERSON_COLOUR, shininess: 5 });
  return page.person.map((part) => {
    const mesh = new Mesh(new SphereGeometry(1, 20, 14), grey);
    const first = new Vector3(...part.from);
    const second = new Vector3(...part.to);
    const axis = second.clone().sub(first);
    mesh.position.copy(first.clone().add(second).multiplyScalar(0.5));
    mesh.scale.set(part.radius_m, axis.length() / 2, part.radius_m);
    mesh.quaternion.setFromUnitVectors(UP, axis.normalize());
    mesh.castShadow = true;
    return mesh;
  });
}

/** Throws where the browser has no WebGL. */
export function webglPainter(page: Page, bodies: readonly Body[]): Painter {
  const canvas = document.createElement("canvas");
  const context = canvas.getContext("webgl2", { antialias: true, alpha: true, powerPreference: "low-power" });
  if (!context) throw new Error("no WebGL");
  const renderer = new WebGLRenderer({ canvas, context, antialias: true, alpha: true });
  renderer.shadowMap.enabled = true;
  renderer.shadowMap.type = PCFShadowMap;
  renderer.shadowMap.autoUpdate = false;
  const scene = new Scene();
  const camera = new PerspectiveCamera((VIEW_ANGLE * 180) / Math.PI, 1, 0.05, 200);
  scene.add(new HemisphereLight("#ffffff", "#b9b2a6", 2.1));
  const sun = new DirectionalLight("#ffffff", 1.9);
  sun.castShadow = true;
  sun.shadow.mapSize.set(1024, 1024);
  sun.shadow.radius = 6;
  scene.add(sun, sun.target);
  const reach = Math.max(...bodies.map((body) => Math.hypot(...body.middle)), 1) * 1.3;
  Object.assign(sun.shadow.camera, { left: -reach, right: reach, top: reach, bottom: -reach, near: 0.1, far: reach * 6 });
  const floor = new Mesh(new PlaneGeometry(reach * 6, reach * 6), new ShadowMaterial({ opacity: 0.22 }));
  floor.receiveShadow = true;
  scene.add(floor);
  const person = personOf(page);
  scene.add(...person);

  const fine = page.piece.balloons.map((balloon) => shape(balloon, FINE));
  const coarse = page.piece.balloons.map((balloon) => shape(balloon, COARSE));
  const instanced = (kind: number, own: Material) => {
    const most = bodies.filter((body) => body.balloon === kind).length;
    const mesh = new InstancedMesh(coarse[kind], own, Math.max(most, 1));
    mesh.frustumCulled = false;
    mesh.count = 0;
    scene.add(mesh);
    return mesh;
  };
  const meshes = page.piece.balloons.map((balloon, kind) => {
    const mesh = instanced(kind, material(balloon));
    mesh.castShadow = true;
    return mesh;
  });
  // seen from inside, a little larger: a dark edge round what is new
  const dark = new MeshBasicMaterial({ color: OUTLINE_COLOUR, side: BackSide });
  const edges = page.piece.balloons.map((_, kind) => instanced(kind, dark));
  const clear = page.piece.balloons.map((balloon, kind) => {
    const seen = material(balloon);
    Object.assign(seen, { transparent: true, opacity: CLEAR, depthWrite: false });
    return instanced(kind, seen);
  });
  const every = [...meshes, ...edges, ...clear];
  const larger = new Matrix4().makeScale(OUTLINE, OUTLINE, OUTLINE);
  const matrices = bodies.map(matrixOf);
  const lowest = Math.min(...bodies.map((body) => body.middle[2] - body.radius), 0);
  let told = "";

  function colourOf(body: Body, look: Look, frame: Frame): Color {
    const own = page.piece.balloons[body.balloon]?.colour ?? "#888888";
    if (look === "picked") return new Color(PICKED_COLOUR);
    return new Color(look === "done" || look === "clear" ? mixed(own, frame.ground.paper, frame.ground.pale) : own);
  }

  function fill(frame: Frame): void {
    const near = frame.near;
    every.forEach((mesh, i) => {
      mesh.count = 0;
      const kind = i % meshes.length;
      mesh.geometry = (near ? fine : coarse)[kind] ?? mesh.geometry;
    });
    bodies.forEach((body, i) => {
      const look = frame.looks[i] ?? "gone";
      const mesh = (look === "clear" ? clear : meshes)[body.balloon];
      const matrix = matrices[i];
      if (look === "gone" || !mesh || !matrix) return;
      mesh.setMatrixAt(mesh.count, matrix);
      mesh.setColorAt(mesh.count, colourOf(body, look, frame));
      mesh.count += 1;
      const edge = edges[body.balloon];
      if (edge && near && (look === "new" || look === "picked")) {
        edge.setMatrixAt(edge.count, matrix.clone().multiply(larger));
        edge.count += 1;
      }
    });
    for (const mesh of every) {
      mesh.instanceMatrix.needsUpdate = true;
      if (mesh.instanceColor) mesh.instanceColor.needsUpdate = true;
    }
    renderer.shadowMap.needsUpdate = !near;
  }

  /** Near by the light comes with the eye, over its left shoulder, and throws no shadow. */
  function light(frame: Frame): void {
    sun.castShadow = !frame.near;
    floor.visible = !frame.near;
    if (!frame.near) return;
    const { eye, about, right, up } = frame.from;
    const away = Math.hypot(eye[0] - about[0], eye[1] - about[1], eye[2] - about[2]);
    const at = new Vector3(...eye);
    at.addScaledVector(new Vector3(...up), away * 0.9).addScaledVector(new Vector3(...right), -away * 0.5);
    sun.position.copy(at);
    sun.target.position.set(...about);
  }

  function settle(frame: Frame): void {
    const { lying } = frame.seat;
    floor.rotation.set(lying ? 0 : -Math.PI / 2, 0, 0);
    floor.position.set(0, lying ? 0 : -0.001, lying ? lowest : 0);
    if (!frame.near) sun.position.set(reach * 0.8, reach * (lying ? 0.7 : 1.8), reach * (lying ? 2 : 1.3));
    if (!frame.near) sun.target.position.set(0, lying ? reach / 3 : reach / 4, 0);
    person.forEach((mesh) => (mesh.visible = frame.person));
  }

  function paint(frame: Frame): void {
    const dense = Math.min(window.devicePixelRatio || 1, 2);
    renderer.setPixelRatio(dense);
    renderer.setSize(frame.width, frame.height, false);
    light(frame);
    const now = [frame.looks.join(), frame.near, frame.seat.lying, frame.person, frame.ground.paper].join("|");
    if (now !== told) {
      settle(frame);
      fill(frame);
      told = now;
    }
    camera.aspect = frame.width / frame.height;
    camera.position.set(...frame.from.eye);
    camera.up.set(...frame.from.up);
    camera.lookAt(...frame.from.about);
    camera.updateProjectionMatrix();
    renderer.render(scene, camera);
  }
  return { canvas, kind: "webgl", paint };
}
