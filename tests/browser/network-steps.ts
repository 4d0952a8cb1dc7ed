import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { SeenPhoto } from '../../src/app/demo/seen-photo.ts';
import { cutCrop, type LeafCrop } from '../../src/classifier/cut-crop.ts';
import { isUnlike } from '../../src/classifier/findings-from-network.ts';
import { openNetwork } from '../../src/classifier/session/open-network.ts';
import type { NetworkAnswer } from '../../src/classifier/types.ts';
import { readLeaf } from '../../src/leaf/read-leaf.ts';
import { decodeInNode } from '../../src/photo/decode-in-node.ts';
import { scaleToWorkingFrame } from '../../src/photo/scale-to-working-frame.ts';
import { chooseCrop, ROOT, sayItIsSmall } from './browser.ts';

const SWITCH = 'Let a small network look at leaves too';

export interface KnownLeaf {
  readonly jpeg: Buffer;
  readonly crop: LeafCrop;
  readonly answer: NetworkAnswer;
}

/** A rendered leaf that the network knows enough of to speak, with what it says of it in Node. */
export async function findKnownLeaf(): Promise<KnownLeaf> {
  const network = await openNetwork(new Uint8Array(readFileSync(join(ROOT, 'models/signs.onnx'))));
  const demo = JSON.parse(readFileSync(join(ROOT, '.cache/demo-photos.json'), 'utf8')) as SeenPhoto[];
  try {
    for (const { jpeg, reading } of demo) {
      const bytes = Buffer.from(jpeg, 'base64');
      const { pixels } = await decodeInNode(bytes);
      const { mask } = readLeaf(pixels, { role: 'old' });
      const crop = mask && cutCrop(scaleToWorkingFrame(pixels), mask.data);
      if (!crop || reading.trouble.length > 0) continue;
      const answer = await network.look(crop);
      if (!isUnlike(answer)) return { jpeg: bytes, crop, answer };
    }
  } finally {
    network.close();
  }
  throw new Error('every leaf of the demo is strange to the network');
}

/** Where the settings say how it stands with the network. */
export const stateOf = (page: Page) => page.locator('#network-state');
export const networkSwitch = (page: Page) => page.getByRole('switch', { name: SWITCH });

export async function goToSettings(page: Page, url: string): Promise<void> {
  await page.goto(`${url}#/help`);
  await networkSwitch(page).waitFor();
}

export async function switchOn(page: Page, url: string): Promise<void> {
  await goToSettings(page, url);
  await networkSwitch(page).check();
  await expect.poll(() => stateOf(page).innerText()).toContain('On this device');
}

/** A fresh look at a kale that is small for its age, with this leaf, low on the plant. */
export async function lookAtLeaf(page: Page, url: string, jpeg: Buffer, name: string): Promise<void> {
  await page.goto(`${url}#/look/new`);
  await chooseCrop(page, 'Kale');
  await sayItIsSmall(page);
  await page
    .getByLabel('Choose photos')
    .setInputFiles([{ name: `${name}.jpg`, mimeType: 'image/jpeg', buffer: jpeg }]);
  await page.getByRole('button', { name: 'Old leaf low on the plant', exact: true }).click();
  await expect.poll(() => page.locator('.measures').count()).toBeGreaterThan(0);
}
