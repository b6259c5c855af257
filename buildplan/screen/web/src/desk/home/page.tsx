export function HomePage() {
  return <main />;
}
