import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { expect } from 'vitest';
import { cutCrop, type LeafCrop } from '../../src/classifier/cut-crop.ts';
import { findingsFromNetwork } from '../../src/classifier/findings-from-network.ts';
import { openNetwork } from '../../src/classifier/session/open-network.ts';
import type { NetworkAnswer } from '../../src/classifier/types.ts';
import { readLeaf } from '../../src/leaf/read-leaf.ts';
import { decodeInNode } from '../../src/photo/decode-in-node.ts';
import { scaleToWorkingFrame } from '../../src/photo/scale-to-working-frame.ts';
import { renderExample } from '../../training/rendered-leaves/render-example.ts';
import { chooseCrop, ROOT, sayItIsSmall } from './browser.ts';

const SWITCH = 'Let a small network look at leaves too';

export interface KnownLeaf {
  readonly jpeg: Buffer;
  readonly crop: LeafCrop;
  readonly answer: NetworkAnswer;
  /** What it reports in Node of the spots on it, as it is kept. */
  readonly report: { readonly sign: string; readonly ratio: number };
}

const SIDE_PX = 512;
const SPOTS = 'spotted@old';

/** A rendered leaf with brown spots, of which the network in Node is sure. */
export async function findSpottedLeaf(): Promise<KnownLeaf> {
  const network = await openNetwork(new Uint8Array(readFileSync(join(ROOT, 'models/signs.onnx'))));
  try {
    for (let seed = 2; seed < 20; seed++) {
      const { rgb } = renderExample(seed, SIDE_PX, { marks: ['brown-spots'] });
      const raw = { width: SIDE_PX, height: SIDE_PX, channels: 3 } as const;
      const jpeg = await sharp(rgb, { raw }).jpeg({ quality: 92 }).toBuffer();
      const { pixels } = await decodeInNode(jpeg);
      const { mask, reading } = readLeaf(pixels, { role: 'old' });
      const crop = mask && cutCrop(scaleToWorkingFrame(pixels), mask.data);
      if (!crop || reading.trouble.length > 0) continue;
      const answer = await network.look(crop);
      const found = findingsFromNetwork(answer, 'old').find(({ sign }) => sign === SPOTS);
      const ratio = found ? found.ifPresent / found.ifAbsent : 0;
      if (ratio >= 4)
        return { jpeg, crop, answer, report: { sign: SPOTS, ratio: Number(ratio.toPrecision(4)) } };
    }
  } finally {
    network.close();
  }
  throw new Error('the network is sure of the spots of none of these leaves');
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
