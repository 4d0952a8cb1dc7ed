/** Made by the build (`vite.config.ts`): every photo of the invented garden, seen. */
declare module 'virtual:demo-photos' {
  const seen: readonly import('./seen-photo.ts').SeenPhoto[];
  export default seen;
}
