/** Made by the build (`vite.config.ts`): every library in the app, with its licence. */
declare module 'virtual:licences' {
  const licences: readonly import('./licence.ts').Licence[];
  export default licences;
}
