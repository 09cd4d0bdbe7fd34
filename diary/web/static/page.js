// What every page can do: talk to the server, say what happened, and show itself anew in place.

const channel = "BroadcastChannel" in window ? new BroadcastChannel("diary") : null;

/** POST (or another method) JSON; resolves to the answer, rejects with a sentence. */
export async function send(address, body = {}, method = "POST") {
  let answer;
  try {
    answer = await fetch(address, {
      method,
      headers: { "Content-Type": "application/json", Accept: "application/json" },
      body: JSON.stringify(body),
    });
  } catch {
    throw new Error("The diary does not answer. Is it still running?");
  }
  const text = await answer.text();
  let found = {};
  try { found = JSON.parse(text); } catch { found = { told: text, html: text }; }
  if (!answer.ok) throw new Error(found.told || `That did not work (${answer.status}).`);
  return found;
}

let hide;
/** A line at the foot of the page, with one thing to do about it. */
export function say(words, { label, act } = {}) {
  const toast = document.getElementById("toast");
  const box = document.createElement("div");
  const line = document.createElement("p");
  line.textContent = words;
  box.append(line);
  if (label) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = label;
    button.addEventListener("click", () => { toast.replaceChildren(); act(); });
    box.append(button);
  }
  toast.replaceChildren(box);
  clearTimeout(hide);
  hide = setTimeout(() => toast.replaceChildren(), label ? 9000 : 5000);
}

/** Fetch this page again and put its live parts in place; the player goes on undisturbed. */
export async function refresh() {
  const address = new URL(location.href);
  address.hash = "";
  const answer = await fetch(address, { headers: { Accept: "text/html" } });
  if (!answer.ok) { location.href = "/"; return; }
  const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
  for (const part of document.querySelectorAll("[data-live]")) {
    const other = fresh.getElementById(part.id);
    if (!other) continue;
    const top = part.scrollTop;
    part.replaceWith(document.adoptNode(other));
    other.scrollTop = top;
  }
  document.dispatchEvent(new CustomEvent("refreshed"));
}

/** Tell the other tabs, and show the change here. */
export async function changed() {
  channel?.postMessage("changed");
  await refresh();
}
channel?.addEventListener("message", () => { if (document.querySelector("[data-live]")) refresh(); });

export async function undo() { await step("/undo"); }
export async function redo() { await step("/redo"); }
async function step(address) {
  try {
    const { told } = await send(address);
    if (document.querySelector("[data-live]")) await changed();
    else if (document.body.dataset.page === "review") location.reload();
    say(told);
  } catch (error) { say(error.message); }
}

/** Milliseconds as "4:05". */
export function clock(ms) {
  const s = Math.max(0, Math.floor(ms / 1000));
  const h = Math.floor(s / 3600), m = Math.floor((s % 3600) / 60), r = String(s % 60).padStart(2, "0");
  return h ? `${h}:${String(m).padStart(2, "0")}:${r}` : `${m}:${r}`;
}

/** Whether a key press belongs to a field or a dialog and not to the page. */
export function typing(event) {
  return event.ctrlKey || event.metaKey || event.altKey
    || event.target.closest?.("input, select, textarea, [contenteditable], dialog") !== null;
}
