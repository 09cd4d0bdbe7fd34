// Side by side: every film from the start of its clip, in step, each stopping at its end.

import { typing } from "./page.js";

export function begin() {
  const films = [...document.querySelectorAll("video.step")];
  const start = (film) => Number(film.dataset.start) / 1000;
  const end = (film) => Number(film.dataset.end) / 1000;
  for (const film of films) {
    film.addEventListener("timeupdate", () => { if (film.currentTime >= end(film) && !film.paused) film.pause(); });
  }
  const inStep = () => {
    if (films.some((film) => !film.paused)) { for (const film of films) film.pause(); return; }
    const fresh = films.every((film) => film.currentTime >= end(film) || film.currentTime < start(film) + 0.1);
    for (const film of films) {
      if (fresh) film.currentTime = start(film);
      film.muted = film !== films[0]; // one voice at a time
      film.play().catch(() => {});
    }
  };
  document.querySelector("[data-act=play-step]")?.addEventListener("click", inStep);
  addEventListener("keydown", (event) => {
    if (event.key === " " && !typing(event) && !event.target.closest("button, a, video")) { event.preventDefault(); inStep(); }
  });
  document.addEventListener("click", (event) => {
    const link = event.target.closest("[data-moment]");
    if (!link) return;
    const column = link.closest("td").cellIndex;
    const film = document.querySelectorAll(".compare tbody tr:first-child td")[column - 1]?.querySelector("video");
    const moment = JSON.parse(link.dataset.moment);
    if (!film || !film.src.includes(moment.recording)) return;
    event.preventDefault();
    film.dataset.end = moment.end;
    film.currentTime = moment.start / 1000;
    film.play().catch(() => {});
  });
}
