export function FilePage({ name }: { name: string }) {
  return <main>{name}</main>;
}
