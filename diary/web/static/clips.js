// Clips on a page: choosing one, playing it, and every way of putting it right, by button or key.

import * as dialogs from "./dialogs.js";
import { clock, changed, say, send, typing, undo } from "./page.js";
import { begin as playMoments } from "./moments.js";

export const state = { player: null, clip: null, observation: null, words: null };

const KEYS = {
  n: "next", p: "previous", f: "doubt", l: "listen", v: "change", y: "right", x: "wrong", a: "add",
  g: "give", o: "clip-right", s: "split", j: "join", "[": "start-here", "]": "end-here",
  c: "new-clip", d: "remove-clip", t: "day", m: "merge", h: "mishearing",
};

export function begin() {
  state.player = playMoments();
  document.addEventListener("click", (event) => {
    const band = event.target.closest("[data-go]");
    if (band) { choose(document.getElementById(band.dataset.go), { scroll: true }); playClip(state.clip); return; }
    const observation = event.target.closest(".obs");
    const clip = event.target.closest(".clip");
    const act = event.target.closest("[data-act]")?.dataset.act;
    if (observation && !event.target.closest(".toolrow")) chooseObservation(observation);
    else if (clip && !event.target.closest(".toolrow")) choose(clip);
    if (event.target.closest("[data-play-clip]")) playClip(clip);
    if (act) perform(act, event.target.closest("[data-act]"));
  });
  addEventListener("keydown", (event) => {
    if (typing(event)) return;
    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      if (event.target.closest("#transcript")) return;
      event.preventDefault();
      step(event.key === "ArrowDown" ? 1 : -1);
    } else if (KEYS[event.key]) { event.preventDefault(); perform(KEYS[event.key]); }
  });
  state.player?.addEventListener("time", (event) => follow(event.detail));
  state.player?.addEventListener("clip", (event) => { if (event.detail.id) choose(document.getElementById(event.detail.id), { scroll: true }); });
  document.addEventListener("refreshed", restore);
  const first = clips()[0];
  const at = new URL(location.href).searchParams.get("t");
  if (at !== null) openAt(Number(at) * 1000);
  else if (first && state.player) state.player.ready(about(first));
}

export const clips = () => [...document.querySelectorAll("#cliplist > .clip")];
export const data = (clip) => JSON.parse(clip.dataset.clip);
const seenIn = (observation) => JSON.parse(observation.dataset.observation);
const place = (one) => ({ recording: one.recording, start_ms: one.start_ms, end_ms: one.end_ms });

/** A clip as the player takes it. */
export function about(clip) {
  const one = data(clip);
  return { recording: one.recording, start: one.start_ms, end: one.end_ms, kind: one.kind, title: one.title, told: `${one.plant} · ${one.title}`, id: clip.id };
}
function playClip(clip) { if (clip && state.player && ["video", "audio"].includes(data(clip).kind)) state.player.play(about(clip)); }

function openAt(ms) {
  const one = document.querySelector("[data-recording]");
  const clip = clips().find((c) => data(c).start_ms <= ms && ms < data(c).end_ms);
  if (clip) choose(clip, { scroll: !matchMedia("(max-width: 62rem)").matches });
  if (one && state.player) state.player.play({ ...JSON.parse(one.dataset.recording), start: ms, end: null }, { on: false });
}

/** Make a clip the chosen one: its tools appear in it. */
export function choose(clip, { scroll = false } = {}) {
  if (!clip || clip === state.clip) { if (scroll) clip?.scrollIntoView({ block: "nearest" }); return; }
  for (const other of document.querySelectorAll(".clip[aria-current], .band[aria-current]")) other.removeAttribute("aria-current");
  document.querySelector(".clip > .tools .toolrow")?.remove();
  chooseObservation(null);
  state.clip = clip;
  clip.setAttribute("aria-current", "true");
  document.querySelector(`[data-go="${clip.id}"]`)?.setAttribute("aria-current", "true");
  clip.querySelector("[data-tools]").append(document.getElementById("clip-tools").content.cloneNode(true));
  if (scroll) clip.scrollIntoView({ block: "nearest" });
}

/** Make an observation the chosen one; null: none. */
export function chooseObservation(observation) {
  for (const other of document.querySelectorAll(".obs[aria-current]")) {
    other.removeAttribute("aria-current");
    other.querySelector(".pick").setAttribute("aria-expanded", "false");
    other.querySelector(".toolrow")?.remove();
  }
  state.observation = observation;
  if (!observation) return;
  const clip = observation.closest(".clip");
  if (clip !== state.clip) choose(clip);
  state.observation = observation;
  observation.setAttribute("aria-current", "true");
  observation.querySelector(".pick").setAttribute("aria-expanded", "true");
  observation.append(document.getElementById("obs-tools").content.cloneNode(true));
}

function step(by) {
  const all = [...document.querySelectorAll("#cliplist .obs")];
  if (!all.length) return;
  let at = all.indexOf(state.observation);
  if (at < 0 && state.clip) at = all.findIndex((one) => one.closest(".clip") === state.clip) - (by > 0 ? 1 : 0);
  const next = all[Math.min(all.length - 1, Math.max(0, at + by))];
  chooseObservation(next);
  next.querySelector(".pick").focus({ preventScroll: true });
  next.scrollIntoView({ block: "nearest" });
}

function turn(by) {
  const all = clips();
  const at = all.indexOf(state.clip);
  const next = all[at < 0 ? 0 : Math.min(all.length - 1, Math.max(0, at + by))];
  if (next) { choose(next, { scroll: true }); playClip(next); }
}

function follow(ms) {
  const line = document.getElementById("timeline");
  if (!line) return;
  line.style.setProperty("--at", `${(ms / Number(line.dataset.duration)) * 100}%`);
  if (!state.player.playing) return;
  const here = clips().find((clip) => data(clip).start_ms <= ms && ms < data(clip).end_ms);
  // what is being put right stays chosen while the film goes on
  if (here && here !== state.clip && !state.observation && !document.querySelector("dialog[open]")) choose(here, { scroll: true });
}

/** After the page was made anew: choose again what was chosen, by its place. */
function restore() {
  const clip = state.clip && data(state.clip);
  const observation = state.observation && seenIn(state.observation);
  state.clip = null; state.observation = null;
  if (clip) {
    const same = clips().filter((one) => data(one).recording === clip.recording);
    choose(same.find((one) => data(one).start_ms <= clip.start_ms && clip.start_ms < data(one).end_ms) ?? same[0]);
  }
  if (observation) {
    const again = [...document.querySelectorAll(".obs")].find((one) => {
      const now = seenIn(one);
      return now.recording === observation.recording && now.start_ms === observation.start_ms && now.trait === observation.trait;
    });
    if (again) chooseObservation(again);
  }
}

async function putRight(events, note = null, moved = null) {
  try {
    const { told } = await send("/put-right", { events });
    // the page of an unnumbered plant ends when its last clip has gone to another
    if (moved && document.body.dataset.page === "plant" && clips().length === 1) { location.href = `/plants/${encodeURIComponent(moved)}`; return; }
    await changed();
    say(note ?? told, { label: "Undo", act: undo });
  } catch (error) { say(error.message); }
}

/** What is marked in the transcript, else the chosen clip's recording at the moment playing. */
function stretch() {
  if (state.words) return state.words;
  const here = document.querySelector("[data-recording]");
  const recording = here ? JSON.parse(here.dataset.recording).recording : state.clip && data(state.clip).recording;
  const now = state.player && state.player.recording === recording ? state.player.now : state.clip ? data(state.clip).start_ms : 0;
  return { recording, start_ms: now, end_ms: now + 2000, text: "" };
}

async function perform(act, source) {
  const clip = source?.dataset.first ? document.getElementById(source.dataset.first) : state.clip;
  const one = clip && data(clip);
  const seen = one ? { plant: one.plant } : {};
  const observation = state.observation && seenIn(state.observation);
  const needs = (thing, words) => { if (!thing) say(words); return Boolean(thing); };
  switch (act) {
    case "play-all": state.player.playAll(clips().filter((c) => ["video", "audio"].includes(data(c).kind)).map(about)); break;
    case "next": turn(1); break;
    case "previous": turn(-1); break;
    case "doubt": {
      const button = document.querySelector("[data-act=doubt]");
      const at = button ? Number(button.dataset.at) : null;
      const doubtful = document.querySelector("#cliplist .clip:is(.likely, .unsure), #cliplist .obs:is(.likely, .unsure, .proposed)");
      if (doubtful?.matches(".obs")) { chooseObservation(doubtful); doubtful.scrollIntoView({ block: "nearest" }); } else if (doubtful) choose(doubtful, { scroll: true });
      if (at !== null && state.clip && state.player) state.player.play({ ...about(state.clip), start: at });
      break;
    }
    case "listen":
      if (observation && state.player) state.player.play({ ...about(clip), start: Math.max(0, observation.start_ms - 300), end: observation.end_ms + 300 });
      else playClip(clip);
      break;
    case "listen-words": state.player?.play({ ...about(clips()[0] ?? clip), ...state.words, start: state.words.start_ms, end: state.words.end_ms }); break;
    case "change": if (needs(observation, "Choose an observation first: ↓")) dialogs.change(observation, (events) => putRight(events)); break;
    case "right": if (needs(observation, "Choose an observation first: ↓")) putRight([{ kind: "Confirm", at: place(observation), seen: seenOf(observation) }]); break;
    case "wrong": if (needs(observation, "Choose an observation first: ↓")) putRight([{ kind: "Reject", at: place(observation), seen: seenOf(observation) }]); break;
    case "add": {
      const where = state.words ?? (clip ? { ...stretchIn(one), text: "" } : null);
      if (needs(where, "Mark words, or choose a clip first")) dialogs.add(where, (events) => putRight(events));
      break;
    }
    case "name-plant":
    case "give":
      if (needs(clip, "Choose a clip first: n")) dialogs.plant({ title: one.plant_kind === "unnamed" ? "What is its number, or name?" : "Which plant is it?", words: `so far: ${one.plant}`, follow: one.plant_kind === "unnamed" }, ({ title, follow }) =>
        putRight([{ kind: follow ? "NamePlant" : "SetSeedling", change: { title }, at: place(one), seen }], null, title));
      break;
    case "clip-right": if (needs(clip, "Choose a clip first: n")) putRight([{ kind: "Confirm", at: place(one), seen }]); break;
    case "split": {
      if (!needs(clip, "Choose a clip first: n")) break;
      const at = stretch().start_ms;
      if (at <= one.start_ms || at >= one.end_ms) { say(`Play to the moment where the second plant begins: ${clock(one.start_ms)} to ${clock(one.end_ms)}`); break; }
      dialogs.plant({ title: "Which plant is it from here on?", words: `split at ${clock(at)}` }, ({ title }) => putRight([{ kind: "Split", change: { at_ms: at, title }, at: place(one), seen }]));
      break;
    }
    case "join": {
      if (!needs(clip, "Choose a clip first: n")) break;
      const next = clips().find((c) => data(c).recording === one.recording && data(c).start_ms >= one.end_ms);
      if (needs(next, "No clip follows this one")) putRight([{ kind: "Join", at: { ...place(one), end_ms: data(next).end_ms }, seen }]);
      break;
    }
    case "start-here":
    case "end-here": {
      if (!needs(clip, "Choose a clip first: n")) break;
      const now = state.words ? (act === "start-here" ? state.words.start_ms : state.words.end_ms) : stretch().start_ms;
      const change = act === "start-here" ? { start_ms: now, end_ms: one.end_ms } : { start_ms: one.start_ms, end_ms: now };
      if (change.end_ms <= change.start_ms) { say("A clip must end after it starts"); break; }
      putRight([{ kind: "SetSpan", change, at: place(one), seen }]);
      break;
    }
    case "new-clip": {
      const where = stretch();
      if (!where.recording) break;
      const end = state.words ? where.end_ms : where.start_ms + 10000;
      dialogs.plant({ title: "A clip of which plant?", times: [where.start_ms, end] }, ({ title, from, to }) =>
        putRight([{ kind: "AddClip", change: { title }, at: { recording: where.recording, start_ms: from, end_ms: to } }]));
      break;
    }
    case "remove-clip": if (needs(clip, "Choose a clip first: n")) putRight([{ kind: "RemoveClip", at: place(one), seen }]); break;
    case "day": if (needs(clip, "Choose a clip first: n")) dialogs.day(one.day, (day) => putRight([{ kind: "SetDate", change: { day }, at: place(one), seen }])); break;
    case "merge":
      if (needs(clip, "Choose a clip first: n")) dialogs.plant({ title: `${one.plant} is the same plant as …` }, ({ title }) => putRight([mergeOf(one, title, seen)]));
      break;
    case "mishearing": dialogs.mishearing(state.words?.text ?? observation?.text ?? "", (change) => putRight([{ kind: "Mishearing", change }], "Remembered. Read the recording again to use it here.")); break;
    default: break;
  }
}

function mergeOf(one, title, seen) {
  if (one.plant_kind !== "unnamed") return { kind: "MergePlants", change: { number: one.key, into: title } };
  // another plant without a number is known by its place, one with a number by that
  return title.startsWith("?") ? { kind: "MergePlants", change: { key: title }, at: place(one), seen } : { kind: "NamePlant", change: { title }, at: place(one), seen };
}

function stretchIn(one) {
  const now = state.player && state.player.recording === one.recording ? state.player.now : one.start_ms;
  const start = Math.min(Math.max(now, one.start_ms), one.end_ms - 1);
  return { recording: one.recording, start_ms: start, end_ms: Math.min(start + 2000, one.end_ms) };
}

function seenOf(observation) { return { trait: observation.trait, value: observation.value, part: observation.part, plant: observation.plant }; }
