import { expect, test } from "vitest";
import { addressOf, firstRoute, routeOf, screenIds } from "./screens.ts";

test("an address is read back as the place it was made for", () => {
  for (const screen of screenIds) {
    const route = { screen, path: screen === "bedside" ? "" : "7/edit" };
    expect(routeOf(addressOf(route))).toEqual(route);
  }
});

test.each(["", "#", "#/", "#/no-such-screen", "#/no-such-screen/7", "#//", "#/Bedside"])(
  "%o is Bedside",
  (hash) => expect(routeOf(hash)).toEqual(firstRoute),
);
