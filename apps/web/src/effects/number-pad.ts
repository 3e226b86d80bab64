const key = "steelyard.keyboard";

/** A keyboard of the device comes up unasked on touch screens only. */
export function wantsPad(): boolean {
  return matchMedia("(pointer: coarse)").matches && !hasGivenUp();
}

export function giveUpPad(): boolean {
  try {
    localStorage.setItem(key, "own");
  } catch {
    // Storage is refused: the choice lasts as long as the page.
  }
  const field = document.activeElement;
  if (field instanceof HTMLElement) {
    // The keyboard comes up when the field is entered anew.
    field.blur();
    requestAnimationFrame(() => field.focus());
  }
  return false;
}

function hasGivenUp(): boolean {
  try {
    return localStorage.getItem(key) !== null;
  } catch {
    return false;
  }
}
