export function NewPage() {
  return <main />;
}
