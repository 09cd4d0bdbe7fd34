// The review list: one question at a time, its moment playing, each answer one key.

import * as dialogs from "./dialogs.js";
import { begin as playMoments } from "./moments.js";
import { say, send, typing, undo } from "./page.js";

let player;

export function begin() {
  player = playMoments();
  const list = document.getElementById("questions");
  if (!list) return;
  list.addEventListener("click", (event) => {
    const question = event.target.closest(".question");
    const button = event.target.closest("[data-answer]");
    if (button) take(question, JSON.parse(button.dataset.answer));
    else if (question && !question.hasAttribute("aria-current")) open(question);
  });
  addEventListener("keydown", (event) => {
    if (typing(event)) return;
    const question = current();
    if (!question) return;
    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      event.preventDefault();
      const next = event.key === "ArrowDown" ? question.nextElementSibling : question.previousElementSibling;
      if (next) open(next);
      return;
    }
    const button = [...question.querySelectorAll("[data-answer]")].find((one) => JSON.parse(one.dataset.answer).key === event.key);
    if (button) { event.preventDefault(); take(question, JSON.parse(button.dataset.answer)); }
  });
  open(list.firstElementChild, { play: false });
}

const current = () => document.querySelector(".question[aria-current]");

function open(question, { play = true } = {}) {
  current()?.removeAttribute("aria-current");
  if (!question) return;
  question.setAttribute("aria-current", "true");
  question.querySelector("h2").focus({ preventScroll: true });
  if (play) question.scrollIntoView({ block: "nearest" });
  const link = question.querySelector("[data-moment]");
  if (!link || !player) return;
  const moment = JSON.parse(link.dataset.moment);
  if (!["video", "audio"].includes(moment.kind)) return;
  const by_itself = document.getElementById("by-itself").checked;
  player.play({ ...moment, start: Math.max(0, moment.start - 500), end: moment.end + 500 }, { on: play && by_itself });
}

function take(question, answer) {
  const { id } = JSON.parse(question.dataset.question);
  if (answer.say === "other plant") {
    dialogs.plant({ title: "Which plant is it?" }, ({ title }) => give(question, { id, say: "other plant", choice: title }));
  } else if (answer.say === "other value") {
    // the recording's own page has everything that is needed
    location.href = question.querySelector("a.small").href;
  } else give(question, { id, say: answer.say, choice: answer.choice });
}

async function give(question, body) {
  const buttons = question.querySelectorAll("button");
  for (const button of buttons) button.disabled = true;
  try {
    const { left } = await send("/review", body);
    const next = question.nextElementSibling ?? question.previousElementSibling;
    question.remove();
    if (!next || left === 0) { location.reload(); return; }
    document.getElementById("left").textContent = left;
    say("Noted", { label: "Undo", act: async () => { await undo(); location.reload(); } });
    open(next);
  } catch (error) {
    for (const button of buttons) button.disabled = false;
    say(error.message);
  }
}
