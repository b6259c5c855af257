// The page's words in the language that the reader chose.
import type { Page, Said } from "./data";
import { filled } from "./isolates";

export class Words {
  constructor(
    private readonly page: Page,
    public language: string,
  ) {}

  /** A message of the page, its {placeholders} filled. */
  say(key: string, values: Readonly<Record<string, string | number>> = {}): string {
    const text = this.page.words[this.language]?.[key] ?? this.page.words["en"]?.[key] ?? key;
    return filled(text, values);
  }

  /** Words that the data have in every language. */
  of(said: Said): string {
    return said[this.language] ?? Object.values(said)[0] ?? "";
  }

  get tag(): string {
    return this.page.tags[this.language] ?? this.language;
  }
}
