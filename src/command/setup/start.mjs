// `npm start`: install, build, serve. Safe to run again; quick when nothing changed.
import { ensureBuild, ensureDependencies, ROOT } from './ensure-ready.mjs';

ensureDependencies();
ensureBuild();
const { preview } = await import('vite');
const port = Number(process.env.PORT ?? 4173);
const server = await preview({
  configFile: `${ROOT}/vite.config.ts`,
  logLevel: 'warn',
  // A taken port moves on to the next one: the address printed is the one served.
  preview: { port, host: process.env.HOST ?? 'localhost' },
});
console.log(`Bedside is at ${server.resolvedUrls?.local[0] ?? `http://localhost:${port}/`}`);
console.log('Once it has opened, it works without this server and without a network. Stop with Ctrl+C.');
