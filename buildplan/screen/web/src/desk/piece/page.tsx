// The piece itself: its shape, and what it is made of beside it.

export function PiecePage({ name }: { name: string }) {
  return <main class="piece">{name}</main>;
}
