// Pages of moments: a click plays one in the player beside the list.

import { typing } from "./page.js";
import { Player } from "./player.js";

/** Make every moment that can be heard play in the page's player; returns the player, or null. */
export function begin() {
  const root = document.getElementById("player");
  if (!root) return null;
  const player = new Player(root);
  document.addEventListener("click", (event) => {
    const link = event.target.closest("[data-moment]");
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const moment = JSON.parse(link.dataset.moment);
    if (moment.kind !== "video" && moment.kind !== "audio") return;
    event.preventDefault();
    player.play(moment);
  });
  addEventListener("keydown", (event) => {
    if (typing(event)) return;
    if (event.key === " " && !event.target.closest("button, a, summary")) { event.preventDefault(); player.toggle(); }
    if (event.key === ",") player.jump(-3000);
    if (event.key === ".") player.jump(3000);
  });
  const first = document.querySelector("[data-moment]");
  if (first) {
    const moment = JSON.parse(first.dataset.moment);
    if (moment.kind === "video" || moment.kind === "audio") player.ready(moment);
    else root.hidden = !document.querySelector('[data-moment*="video"], [data-moment*="audio"]');
  }
  return player;
}
