// Writing in the file: what is written is saved a moment later, on the version it was written on.
import { saveText, saveFirst } from "../actions";
import type { Design } from "../contract";
import { design, met, mine, saving } from "../state";

const PAUSE_MS = 500; // in writing, after which it is saved

export class Writing {
  private base: string;
  private unsaved: string | null = null;
  private clock: ReturnType<typeof setTimeout> | undefined;
  private going: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly name: string,
    first: Design,
  ) {
    this.base = first.version;
    saveFirst(() => this.saveNow());
  }

  written(text: string): void {
    this.unsaved = text;
    saving.value = "saving";
    clearTimeout(this.clock);
    this.clock = setTimeout(() => void this.saveNow(), PAUSE_MS);
  }

  /** Whether a new version may take the place of what stands in the editor. */
  takes(now: Design): boolean {
    if (now.name !== this.name || this.unsaved !== null) return false;
    this.base = now.version;
    return true;
  }

  saveNow(): Promise<unknown> {
    clearTimeout(this.clock);
    this.going = this.going.then(() => this.save());
    return this.going;
  }

  private async save(): Promise<void> {
    const text = this.unsaved;
    if (text === null || design.value?.name !== this.name) return;
    const outcome = await saveText(text, this.base);
    if (outcome === "failed") return; // it stays unsaved, and is tried again with the next letter
    if (outcome === "met") mine.value = this.unsaved;
    const more = this.unsaved !== text && outcome === "stands";
    if (!more) this.unsaved = null;
    this.base = design.value.version;
    if (!more) design.value = { ...design.value }; // the editor takes over what stands in the file
    else await this.save();
  }

  /** Put what was written here in the other's place, or leave that; both stay in the history. */
  async settle(takeMine: boolean): Promise<void> {
    const text = mine.value;
    mine.value = null;
    met.value = null;
    if (!takeMine || text === null) return;
    this.unsaved = text;
    await this.saveNow();
  }

  close(): void {
    clearTimeout(this.clock);
    mine.value = null;
    saveFirst(null);
  }
}
