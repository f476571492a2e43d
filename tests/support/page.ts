import type { Page } from 'playwright-core';

/** Waits until what stands on the card is drawn exactly. */
export async function exact(page: Page): Promise<void> {
  try {
    await page.waitForFunction(() => document.querySelector('.stamp')?.textContent === 'exact', null, {
      timeout: 30_000,
    });
  } catch (e) {
    const said = await page.locator('.stamp, .faults, .notice').allTextContents();
    throw new Error(`not drawn exactly: ${said.join(' | ')}`, { cause: e });
  }
}

/** Picks a value of the card by its path in the recipe, such as pattern.gap; unfolds what hides it. */
export async function pick(page: Page, key: string): Promise<void> {
  const value = page.locator(`[data-key="${key}"]`);
  await value.evaluate((b) => {
    const fold = b.closest('details');
    if (fold) fold.open = true;
  });
  await value.click();
  await page.locator('.dock .slide, .dock .tiles, .dock .typed').first().waitFor();
}

/** Types a value into the field of the picked one, and waits for the exact drawing. */
export async function type(page: Page, text: string): Promise<void> {
  await page.locator('.dock .typed').fill(text);
  await page.keyboard.press('Enter');
}

/** Drags the picked value's slider by mouse from where it is to shares of its length, one after the other. */
export async function dragTo(page: Page, shares: readonly number[]): Promise<void> {
  const slide = page.locator('.slide');
  const box = (await slide.boundingBox())!;
  const handle = 18;
  const at = (share: number): number => box.x + handle / 2 + share * (box.width - handle);
  const from = await slide.evaluate((s) => {
    const { valueAsNumber, min, max } = s as HTMLInputElement;
    return (valueAsNumber - Number(min)) / (Number(max) - Number(min));
  });
  const y = box.y + box.height * 0.7;
  await page.mouse.move(at(from), y);
  await page.mouse.down();
  for (const share of shares) await page.mouse.move(at(share), y, { steps: 4 });
  await page.mouse.up();
}

/** What a sentence shows for a value. */
export function shown(page: Page, key: string): Promise<string | null> {
  return page.locator(`[data-key="${key}"]`).textContent();
}
