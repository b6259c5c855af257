// The calls to the desk's server on this machine. Nothing else is asked.
import type { Beginning, Design, Edit, Facts, From, Home, Job, Made, Met, Offer, PageWords, Printed, Printing, Problem, Shown } from "./contract";

/** What the server refused, in its words. */
export class Refused extends Error {
  constructor(
    readonly status: number,
    message: string,
    readonly answer: unknown,
  ) {
    super(message);
  }
}

/** The server did not answer at all. */
export class NotThere extends Error {}

const KEPT = "buildplan:language";
let language = "";
try {
  language = localStorage.getItem(KEPT) ?? "";
} catch {
  // a browser that keeps nothing: the server's own language then
}

/** Have all that is answered said in a language. */
export function answerIn(wanted: string): void {
  language = wanted;
  try {
    localStorage.setItem(KEPT, wanted);
  } catch {
    // it holds for as long as the page is open
  }
}

/** An address with the language that its answer is to be in. */
export function addressed(address: string): string {
  return language ? `${address}${address.includes("?") ? "&" : "?"}language=${language}` : address;
}

async function answered(address: string, asked: RequestInit): Promise<Response> {
  try {
    return await fetch(addressed(address), { ...asked, credentials: "same-origin", cache: "no-store" });
  } catch {
    throw new NotThere(address);
  }
}

async function read(response: Response): Promise<unknown> {
  const text = await response.text();
  try {
    return text === "" ? null : JSON.parse(text);
  } catch {
    return null;
  }
}

async function told<T>(response: Response): Promise<T> {
  const answer = await read(response);
  if (response.ok) return answer as T;
  const message = (answer as { message?: unknown } | null)?.message;
  throw new Refused(response.status, typeof message === "string" ? message : response.statusText, answer);
}

/** What stands at an address of the desk. */
export async function get<T>(address: string): Promise<T> {
  return told<T>(await answered(address, {}));
}

export async function send<T>(method: "POST" | "PUT" | "DELETE", address: string, body?: unknown): Promise<T> {
  const asked: RequestInit = { method };
  if (body instanceof FormData) asked.body = body;
  else if (body !== undefined) {
    asked.body = JSON.stringify(body);
    asked.headers = { "Content-Type": "application/json" };
  }
  return told<T>(await answered(address, asked));
}

const at = (name: string): string => `/api/design/${encodeURIComponent(name)}`;

export const getWords = (): Promise<PageWords> => get("/api/words");
export const getHome = (): Promise<Home> => get("/api/home");
export const tellSeen = (names: readonly string[]): Promise<unknown> => send("POST", "/api/home/seen", { names });
export const getBeginnings = (): Promise<readonly Beginning[]> => get("/api/beginnings");
export const getDesign = (name: string): Promise<Design> => get(at(name));
export const getOffers = (name: string): Promise<readonly Offer[]> => get(`${at(name)}/offers`);
export const getPrinting = (): Promise<Printing> => get("/api/print");
export const getPrinted = (name: string): Promise<Printed> => get(`${at(name)}/printed`);
export const getJob = (job: string): Promise<Job> => get(`/api/jobs/${encodeURIComponent(job)}`);
export const stopJob = (job: string): Promise<unknown> => send("DELETE", `/api/jobs/${encodeURIComponent(job)}`);

export const makeNew = (name: string, from: From): Promise<Made> => send("POST", "/api/new", { name, from });

export function makeFromPicture(name: string, height: string, picture: File): Promise<Made> {
  const form = new FormData();
  form.set("name", name);
  form.set("height", height);
  form.set("file", picture);
  return send("POST", "/api/new/picture", form);
}

export type CardDeed = "copy" | "rename" | "away" | "back";
export const doToCard = (name: string, deed: CardDeed, newName?: string): Promise<Made> =>
  send("POST", `${at(name)}/${deed}`, newName === undefined ? {} : { name: newName });

export const print = (name: string, what: Readonly<Record<string, string | number | boolean | Readonly<Record<string, number>>>>): Promise<{ job: string }> => send("POST", `${at(name)}/print`, what);

/** The address of a step's picture as it will be printed. */
export const stepPicture = (name: string, step: number, version: string): string => addressed(`${at(name)}/step/${step}.svg?version=${version}`);

/** A change of a design; where two met, both. */
async function changed(call: Promise<Design>): Promise<Design | Met> {
  try {
    return await call;
  } catch (error) {
    if (error instanceof Refused && error.status === 409) return { message: error.message, ...(error.answer as object) } as Met;
    throw error;
  }
}

export const putText = (name: string, base: string, text: string): Promise<Design | Met> => changed(send("PUT", at(name), { base, text }));
export const postEdits = (name: string, base: string, edits: readonly Edit[]): Promise<Design | Met> => changed(send("POST", `${at(name)}/edit`, { base, edits }));
export const postBack = (name: string, base: string, way: "undo" | "redo"): Promise<Design | Met> => changed(send("POST", `${at(name)}/${way}`, { base }));

export const hasMet = (answer: Design | Met): answer is Met => "kept" in answer;

/** What is worked out of a version: there, not yet, or not to be had and why. */
export type Worked<T> = { state: "there"; value: T } | { state: "working"; words: string } | { state: "cannot"; problems: readonly Problem[] };

async function worked<T>(address: string): Promise<Worked<T>> {
  const response = await answered(address, {});
  if (response.status === 202) return { state: "working", words: ((await read(response)) as { words?: string } | null)?.words ?? "" };
  if (response.status === 422) {
    const answer = (await read(response)) as { problems?: readonly Problem[] } | null;
    return { state: "cannot", problems: answer?.problems ?? [] };
  }
  return { state: "there", value: await told<T>(response) };
}

export const getFacts = (name: string, version: string): Promise<Worked<Facts>> => worked(`${at(name)}/facts?version=${version}`);
export const getPiece = (name: string, version: string): Promise<Worked<Shown>> => worked(`${at(name)}/piece?version=${version}`);
