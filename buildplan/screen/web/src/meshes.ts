// What WebGL draws: each kind of balloon as instanced meshes, and the person beside the piece.
import {
  BackSide,
  Color,
  DoubleSide,
  InstancedMesh,
  LatheGeometry,
  type Material,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  MeshPhongMaterial,
  Quaternion,
  Shape,
  ShapeGeometry,
  Vector2,
  Vector3,
} from "three";
import type { Body } from "./bodies";
import type { Balloon, Person } from "./data";
import { PERSON_COLOUR } from "./painter";

// shininess, and the strength of the highlight, by eye
const FINISHES: Readonly<Record<string, readonly [number, number]>> = {
  standard: [70, 0.3],
  pearl: [30, 0.55],
  metallic: [110, 0.95],
  clear: [120, 0.8],
  matt: [4, 0.05],
};
const PALE_FINISH = "matt"; // what stands already does not shine
// points of an outline left out, and points round a balloon: near by, and of the whole piece
const FINE = [1, 24] as const;
const COARSE = [3, 10] as const;
const SEEN_THROUGH = 0.22; // opacity of what stands before new work
const OUTLINE = 1.07; // the edge round what is new, in sizes of a balloon
const OUTLINE_COLOUR = "#15191e";
const UP = new Vector3(0, 1, 0);

/** How a body can be drawn; an edge goes round what is new. */
export type Manner = "solid" | "pale" | "clear" | "edge";

/** One kind of balloon: a mesh for each manner, and its shape near by and far off. */
export interface KindOfBalloon {
  meshes: Readonly<Record<Manner, InstancedMesh>>;
  fine: LatheGeometry;
  coarse: LatheGeometry;
}

export function kindOf(balloon: Balloon, count: number): KindOfBalloon {
  const coarse = shape(balloon, COARSE);
  const instanced = (material: Material) => {
    const mesh = new InstancedMesh(coarse, material, Math.max(count, 1));
    mesh.frustumCulled = false;
    mesh.count = 0;
    return mesh;
  };
  const clear = material(balloon, balloon.finish);
  Object.assign(clear, { transparent: true, opacity: SEEN_THROUGH, depthWrite: false });
  const meshes = {
    solid: instanced(material(balloon, balloon.finish)),
    pale: instanced(material(balloon, PALE_FINISH)),
    clear: instanced(clear),
    // seen from inside, a little larger: a dark edge
    edge: instanced(new MeshBasicMaterial({ color: OUTLINE_COLOUR, side: BackSide })),
  };
  meshes.solid.castShadow = true;
  meshes.pale.castShadow = true;
  return { meshes, fine: shape(balloon, FINE), coarse };
}

function material(balloon: Balloon, finish: string): MeshPhongMaterial {
  const [shininess, strength] = FINISHES[finish] ?? [70, 0.3];
  const made = new MeshPhongMaterial({ shininess, specular: new Color("#ffffff").multiplyScalar(strength) });
  if (finish === "metallic") made.specular.lerp(new Color(balloon.colour), 0.5);
  if (finish === "clear") Object.assign(made, { transparent: true, opacity: 0.5 });
  return made;
}

function shape(balloon: Balloon, [every, round]: readonly [number, number]): LatheGeometry {
  const outline = balloon.profile.filter((_, i) => i % every === 0);
  return new LatheGeometry(outline.map(([y, r]) => new Vector2(r, y)), round);
}

/** Where a body is, and how large. */
export function matrixOf(body: Body): Matrix4 {
  const first = new Vector3(...body.first);
  const axis = new Vector3(...body.second).sub(first);
  const length = axis.length();
  const turn = new Quaternion().setFromUnitVectors(UP, axis.normalize());
  const across = body.radius * 2;
  return new Matrix4().compose(new Vector3(...body.middle), turn, new Vector3(across, length, across));
}

const LARGER = new Matrix4().makeScale(OUTLINE, OUTLINE, OUTLINE);

/** The place of the edge round a body. */
export function edgeOf(body: Matrix4): Matrix4 {
  return body.clone().multiply(LARGER);
}

/** A flat figure that stands beside the piece. */
export function figureOf(person: Person): Mesh {
  const body = new Shape();
  body.moveTo(...person.body.start);
  for (const piece of person.body.pieces) body.bezierCurveTo(...piece);
  const head = new Shape();
  head.absarc(...person.head, 0, 2 * Math.PI, false);
  const mesh = new Mesh(new ShapeGeometry([body, head], 8), new MeshBasicMaterial({ color: PERSON_COLOUR, side: DoubleSide }));
  mesh.position.set(person.foot_x, 0, 0);
  mesh.castShadow = true;
  return mesh;
}
