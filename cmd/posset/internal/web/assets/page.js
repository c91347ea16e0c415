"use strict";
document.documentElement.classList.add("has-script");

for (const button of document.querySelectorAll("[data-add-row]")) {
  button.addEventListener("click", () => {
    const rows = document.getElementById(button.dataset.addRow);
    const row = rows.lastElementChild.cloneNode(true);
    for (const input of row.querySelectorAll("input")) input.value = "";
    rows.append(row);
    row.querySelector("input").focus();
  });
}

// What cannot be read, or else the answer, is where a reader goes on.
const first = document.getElementById("wrong") || (location.hash === "#answer" && document.getElementById("answer"));
if (first) first.focus();

// The spec: every change of form or text goes to this machine and comes back
// assessed. Only the newest answer is shown.
const keys = document.getElementById("keys");
if (keys) {
  const text = document.getElementById("text");
  const said = document.getElementById("said");
  const body = document.getElementById("answer-body");
  const rows = document.getElementById("recipe-rows");
  const pause = 60; // ms between the last stroke and the question
  let before = null, timer = 0, changed = 0, asked = 0, shownRows = rows.childElementCount, wanted = null;

  const show = (out, sent, byForm) => {
    before = out.state;
    if (byForm && text.value === sent) text.value = out.text;
    if (out.rows !== shownRows) {
      rows.innerHTML = out.recipe;
      shownRows = out.rows;
    }
    for (const input of keys.querySelectorAll("[data-key]")) {
      if (input !== document.activeElement) input.value = out.fields[input.dataset.key] ?? "";
    }
    body.innerHTML = out.answer;
    said.textContent = out.said;
  };

  const ask = async (change) => {
    const mine = ++asked, sent = text.value, started = performance.now(), since = changed || started;
    changed = 0;
    try {
      const reply = await fetch("/spec/edit", {
        method: "POST", headers: { "Content-Type": "application/json" },
        body: JSON.stringify({ text: sent, before, ...change }),
      });
      if (!reply.ok) throw new Error((await reply.text()).trim());
      const out = await reply.json();
      if (mine !== asked) return;
      show(out, sent, change !== undefined);
      document.getElementById("answer").dataset.tookMs = (performance.now() - since).toFixed(1);
      document.getElementById("answer").dataset.turn = mine;
    } catch (e) {
      if (mine === asked) said.textContent = e.message === "Failed to fetch" ? "posset serve does not answer any more; start it again" : e.message;
    }
  };

  const later = (change) => {
    if (wanted && change && wanted.set.Key !== change.set.Key) ask(wanted);
    wanted = change ?? null;
    changed = performance.now();
    clearTimeout(timer);
    timer = setTimeout(() => { wanted = null; ask(change); }, pause);
  };
  text.addEventListener("input", () => later(undefined));
  keys.addEventListener("input", (e) => {
    if (e.target.dataset.key) later({ set: { Key: e.target.dataset.key, Value: e.target.value } });
  });
  keys.addEventListener("submit", (e) => e.preventDefault());
  document.getElementById("add-ingredient").addEventListener("click", async () => {
    await ask({ add: "ingredient" });
    rows.lastElementChild?.querySelector("input").focus();
  });
  ask(undefined);
}

// Records: the chosen files stay with the page, and are sent again whenever a
// unit, a role or the target changes.
const records = document.getElementById("records");
if (records) {
  const log = document.getElementById("log");
  const said = document.getElementById("said");
  const shown = document.getElementById("answer");
  const drop = document.getElementById("drop");
  let turn = 0;

  const read = async () => {
    if (!log.files.length) {
      said.textContent = "No record was chosen; drop a file, or choose one.";
      return;
    }
    const mine = ++turn, started = performance.now();
    said.textContent = "Reading " + log.files.length + (log.files.length === 1 ? " file ..." : " files ...");
    try {
      const reply = await fetch("/records?part=yes", { method: "POST", body: new FormData(records) });
      const body = await reply.text();
      if (mine !== turn) return;
      if (!reply.ok) throw new Error(body.trim());
      shown.innerHTML = body;
      const head = document.getElementById("records-head") || document.getElementById("wrong");
      said.textContent = head ? head.textContent : "";
      shown.dataset.turn = mine;
      shown.dataset.tookMs = (performance.now() - started).toFixed(0);
    } catch (e) {
      if (mine === turn) said.textContent = e.message === "Failed to fetch" ? "The files could not be sent; they may be larger than 64 MB, or posset serve has ended." : e.message;
    }
  };

  records.addEventListener("submit", (e) => {
    if (e.submitter && e.submitter.hasAttribute("formaction")) return;
    e.preventDefault();
    read();
  });
  log.addEventListener("change", read);
  document.addEventListener("change", (e) => {
    if (e.target !== log && e.target.form === records && log.files.length) read();
  });
  for (const kind of ["dragenter", "dragover"]) {
    drop.addEventListener(kind, (e) => { e.preventDefault(); drop.classList.add("over"); });
  }
  drop.addEventListener("dragleave", () => drop.classList.remove("over"));
  drop.addEventListener("drop", (e) => {
    e.preventDefault();
    drop.classList.remove("over");
    if (e.dataTransfer.files.length) {
      log.files = e.dataTransfer.files;
      read();
    }
  });
}
