// One player a page: recordings by id, clips that stop at their end, one after another.

import { clock, send } from "./page.js";

export class Player extends EventTarget {
  constructor(root) {
    super();
    this.root = root;
    this.screen = root.querySelector("#screen");
    this.wave = root.querySelector("#wave");
    this.note = root.querySelector("#stage-note");
    this.told = root.querySelector("#playing");
    this.clockface = root.querySelector("#clock");
    this.recording = null;
    this.stop = null;
    this.queue = [];
    this.peaks = new Map();
    const screen = this.screen;
    screen.addEventListener("play", () => { this.#watch(); this.#show(); });
    screen.addEventListener("pause", () => this.#show());
    screen.addEventListener("seeked", () => this.#tick());
    screen.addEventListener("loadedmetadata", () => this.#loaded());
    screen.addEventListener("error", () => this.#unplayable());
    screen.addEventListener("click", () => this.toggle());
    this.wave.addEventListener("click", (event) => {
      const box = this.wave.getBoundingClientRect();
      this.seek(((event.clientX - box.left) / box.width) * screen.duration * 1000);
    });
    root.addEventListener("click", (event) => {
      const act = event.target.closest("[data-act]")?.dataset.act;
      if (act === "play") this.toggle();
      if (act === "back") this.jump(-3000);
      if (act === "forward") this.jump(3000);
    });
    root.querySelector("#speed").addEventListener("change", (event) => {
      screen.playbackRate = Number(event.target.value);
    });
    new ResizeObserver(() => this.#draw()).observe(this.wave);
  }

  get now() { return Math.round(this.screen.currentTime * 1000); }
  get playing() { return !this.screen.paused && !this.screen.ended; }

  /** Load a recording without playing it, so that a clip of it starts at once. */
  ready(moment) {
    if (this.recording === moment.recording) {
      this.wanted = moment.start;
      if (this.screen.readyState >= 1) this.#loaded();
      return;
    }
    this.recording = moment.recording;
    this.note.textContent = "";
    this.root.classList.toggle("sound-only", moment.kind === "audio");
    this.wave.hidden = moment.kind !== "audio";
    this.kind = moment.kind;
    this.screen.src = `/media/${moment.recording}`;
    this.wanted = moment.start ?? 0;
    if (moment.kind === "audio") this.#outline(moment.recording);
  }

  /** Play a moment {recording, start, end, kind, title}; without an end it plays on. */
  async play(moment, { on = true } = {}) {
    this.stop = moment.end ?? null;
    this.told.textContent = moment.told ?? moment.title ?? "";
    if (this.recording !== moment.recording) this.ready(moment);
    this.wanted = moment.start;
    if (this.screen.readyState >= 1) this.#loaded();
    if (on) {
      try { await this.screen.play(); } catch { this.#show(); /* a browser that wants a click first */ }
    }
  }

  /** Play moments one after another. */
  playAll(moments) {
    const [first, ...rest] = moments;
    this.queue = rest;
    if (first) { this.play(first); this.dispatchEvent(new CustomEvent("clip", { detail: first })); }
  }

  seek(ms) { this.stop = null; this.queue = []; this.screen.currentTime = Math.max(0, ms / 1000); }
  jump(ms) { this.screen.currentTime = Math.max(0, this.screen.currentTime + ms / 1000); }
  toggle() {
    if (!this.screen.paused) { this.screen.pause(); return; }
    if (this.stop !== null && this.now >= this.stop - 50) this.stop = null;
    this.screen.play().catch(() => {});
  }

  #loaded() {
    if (this.wanted !== undefined && this.wanted !== null) {
      this.screen.currentTime = this.wanted / 1000;
      this.wanted = null;
    }
    if (this.kind === "video" && this.screen.videoWidth === 0) this.#unplayable();
    this.#tick();
  }

  #watch() {
    const step = () => {
      if (this.screen.paused) return;
      this.#tick();
      requestAnimationFrame(step);
    };
    requestAnimationFrame(step);
  }

  #tick() {
    const length = this.screen.duration;
    this.clockface.textContent = clock(this.now) + (length ? ` / ${clock(length * 1000)}` : "");
    if (this.stop !== null && this.now >= this.stop && this.playing) {
      const next = this.queue.shift();
      if (next) { this.play(next); this.dispatchEvent(new CustomEvent("clip", { detail: next })); }
      else { this.screen.pause(); }
    }
    this.#draw();
    this.dispatchEvent(new CustomEvent("time", { detail: this.now }));
  }

  #show() {
    this.root.querySelector("[data-act=play]").classList.toggle("is-playing", this.playing);
  }

  async #unplayable() {
    const recording = this.recording;
    if (!recording || this.asking === recording) return;
    this.asking = recording;
    this.note.textContent = "This browser cannot play the film as it is. A copy is being made …";
    try {
      for (;;) {
        const work = await send(`/preview/${recording}`);
        if (this.recording !== recording) break;
        if (work.state === "done") {
          this.note.textContent = "";
          this.screen.src = `/media/${recording}?copy`;
          break;
        }
        if (work.state === "failed") { this.note.textContent = work.message; return; }
        const share = work.progress?.share;
        if (share) this.note.textContent = `A copy that can be played is being made: ${Math.round(share * 100)} %`;
        await new Promise((done) => setTimeout(done, 1500));
      }
    } catch (error) { this.note.textContent = error.message; }
    this.asking = null;
  }

  async #outline(recording) {
    if (!this.peaks.has(recording)) {
      const answer = await fetch(`/peaks/${recording}`);
      this.peaks.set(recording, answer.ok ? new Uint8Array(await answer.arrayBuffer()) : new Uint8Array());
    }
    this.#draw();
  }

  #draw() {
    if (this.wave.hidden) return;
    const peaks = this.peaks.get(this.recording);
    const wide = this.wave.clientWidth, high = this.wave.clientHeight;
    if (!peaks?.length || !wide) return;
    const scale = window.devicePixelRatio || 1;
    if (this.wave.width !== Math.round(wide * scale)) { this.wave.width = wide * scale; this.wave.height = high * scale; }
    const pen = this.wave.getContext("2d");
    pen.setTransform(scale, 0, 0, scale, 0, 0);
    pen.clearRect(0, 0, wide, high);
    const style = getComputedStyle(document.documentElement);
    const done = (this.screen.currentTime / (this.screen.duration || 1)) * wide;
    const top = Math.max(...peaks) || 1;
    for (let x = 0; x < wide; x += 3) {
      const from = Math.floor((x / wide) * peaks.length);
      const to = Math.max(from + 1, Math.floor(((x + 3) / wide) * peaks.length));
      let loud = 0;
      for (let i = from; i < to; i += 1) loud = Math.max(loud, peaks[i] || 0);
      const h = Math.max(2, (loud / top) * (high - 16));
      pen.fillStyle = style.getPropertyValue(x < done ? "--accent" : "--soft");
      pen.fillRect(x, (high - h) / 2, 2, h);
    }
  }
}
