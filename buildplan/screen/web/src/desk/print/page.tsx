export function PrintPage({ name }: { name: string }) {
  return <main>{name}</main>;
}
