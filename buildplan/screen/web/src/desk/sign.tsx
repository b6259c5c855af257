// Our own signs, drawn in a square of 24, beside the words that they stand for.

const SIGNS = {
  home: "M4 11l8-7l8 7M6 9.5V20h12V9.5M10 20v-6h4v6",
  piece: "M12 3c-3 3-3 6 0 9c3-3 3-6 0-9zM12 12c-3 3-3 6 0 9c3-3 3-6 0-9zM10.5 12h3",
  file: "M6 3h8l4 4v14H6zM14 3v4h4M9 12h6M9 16h6",
  print: "M7 9V3h10v6M7 17H4V9h16v8h-3M7 14h10v7H7z",
  undo: "M9 6L4 11l5 5M4 11h10a5 5 0 0 1 0 10h-2",
  redo: "M15 6l5 5l-5 5M20 11H10a5 5 0 0 0 0 10h2",
  add: "M12 5v14M5 12h14",
  away: "M3 5h18v4H3zM5 9v11h14V9M10 13h4",
  back: "M14 6l-6 6l6 6",
  copy: "M8 8h12v13H8zM16 8V3H4v13h4",
  rename: "M4 20l1-4L16 5l3 3L8 19zM13.5 7.5l3 3",
  bring: "M3 5h18v4H3zM5 9v11h14V9M12 18v-6M9 15l3-3l3 3",
  close: "M6 6l12 12M18 6L6 18",
  caution: "M12 3L2 20h20zM12 10v5M12 17.3v.4",
  done: "M4 12.5l5 5L20 6.5",
  stands: "M12 4v13M5 20h14M8.5 8L12 4l3.5 4",
  held: "M10 20V7M5 20h14M10 7l7 13M8 4h4v3H8z",
  leans: "M9 20L16 5M4 20h16M8 10a5 5 0 0 0-3 4",
  falls: "M5 17l14-4M4 20h16M15 5c3 1 4 3 4 5M21 7l-2 3l-3-1.5",
  unknown: "M9 9a3 3 0 1 1 4.5 2.6c-1 .6-1.5 1.2-1.5 2.4M12 17.5v.4",
  working: "M12 3v4M12 17v4M3 12h4M17 12h4M5.6 5.6l2.9 2.9M15.5 15.5l2.9 2.9M5.6 18.4l2.9-2.9M15.5 8.5l2.9-2.9",
  menu: "M5 12h.1M12 12h.1M19 12h.1",
  search: "M10.5 4a6.5 6.5 0 1 0 0 13a6.5 6.5 0 1 0 0-13M15.5 15.5L21 21",
  draw: "M4 18c4-12 7 3 10-6c1.500-4 4-5 6-5M4 21h16",
  picture: "M4 5h16v14H4zM4 16l5-5l4 4l3-2l4 4M15.500 9v.1",
  letters: "M4 20L9 5l5 15M6 15h6M16 20V9h2a2.500 2.500 0 0 1 0 5h-2h2.500a3 3 0 0 1 0 6z",
  open: "M14 4h6v6M20 4l-9 9M17 14v6H4V7h6",
} as const;

export type SignName = keyof typeof SIGNS;

export function Sign({ name }: { name: SignName }) {
  return (
    <svg class="sign" viewBox="0 0 24 24" aria-hidden="true">
      <path d={SIGNS[name]} />
    </svg>
  );
}
