// The page follows the lesson: it hears that there is news, asks what is now, and lets the
// sheets and the fields show it.

import { Sheets } from "./sheets.js";
import { Wishes, element } from "./wishes.js";

const token = document.querySelector('meta[name="token"]').content;
const at = (id) => document.getElementById(id);

const page = {
  now: null, // what the server last said: file, shown, fault
  tried: null, // a version with a change, while there is one
  sums: [], // of its order
};

const sheets = new Sheets(at("sheet"), at("choice"), shown_changed);
const wishes = new Wishes({
  ask: (path, body) => ask(path, body),
  base: () => page.now?.shown ?? null,
  is_faulty: () => Boolean(page.now?.fault),
  show: (tried, sums) => {
    page.tried = tried;
    page.sums = sums ?? [];
    show();
  },
  hold: (work) => sheets.hold(work),
  say,
});

// Asks for a change; what is refused is thrown in words.
async function ask(path, body) {
  const answer = await fetch(path, {
    method: "POST",
    headers: { "Content-Type": "application/json", "X-Puddlebook-Token": token },
    body: JSON.stringify(body),
  });
  if (answer.ok) return answer.json();
  const refusal = new Error((await answer.text()).trim());
  refusal.status = answer.status;
  throw refusal;
}

function say(text) {
  at("status").classList.remove("lost");
  at("status").textContent = text;
}

// What the lesson is now. Several pieces of news at once are one look.
let looking = false;
let again = false;
async function look() {
  if (looking) {
    again = true;
    return;
  }
  looking = true;
  do {
    again = false;
    try {
      const answer = await fetch("/now");
      if (answer.ok) {
        const before = page.now;
        page.now = await answer.json();
        page.tried = null;
        sheets.hold(() => {
          show(before);
          wishes.follow();
        });
      }
    } catch {
      lost();
    }
  } while (again);
  looking = false;
}

// Shows what is now, or what is tried. `before` is what was, when the files changed.
function show(before) {
  const { file, shown, fault } = page.now;
  const version = page.tried ?? shown;
  const title = version?.title ?? file;
  at("title").textContent = title;
  at("title").lang = version?.language ?? "en";
  at("file").textContent = file;
  document.title = fault ? `Wrong: ${title}` : title;

  const redrawn = sheets.hold(() => {
    show_fault(fault, Boolean(shown));
    show_mode(fault, shown);
    show_remarks(version?.remarks ?? []);
    return sheets.show(version, { beside: page.tried ? shown : before?.shown });
  });
  shown_changed();

  if (before === undefined) return;
  if (fault) {
    say(shown ? "Something is wrong; the pages are the last that were right." : "Something is wrong.");
  } else if (before === null) {
    say("Save the lesson, and the pages follow.");
  } else {
    const time = new Date().toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", second: "2-digit" });
    say(redrawn.length ? `Drawn again at ${time}: ${pages_of(redrawn)}.` : `Looked again at ${time}: every page is as it was.`);
  }
}

// What was drawn again, in a few words.
function pages_of(redrawn) {
  const count = (pages) => (pages === 1 ? "1 page" : `${pages} pages`);
  const all = redrawn.reduce((sum, { pages }) => sum + pages.length, 0);
  if (redrawn.length > 2) return `${count(all)} of ${redrawn.length} handouts`;
  return redrawn.map(({ name, pages }) => `${count(pages.length)} of ${name}`).join(", ");
}

function show_fault(fault, has_pages) {
  const panel = at("fault");
  panel.hidden = !fault;
  if (!fault) {
    panel.replaceChildren();
    return;
  }
  if (panel.querySelector("pre")?.textContent === fault) return;
  const head = document.createElement("h2");
  head.textContent = has_pages ? "The lesson is wrong at the moment" : "The lesson is wrong, so there is nothing to draw yet";
  const text = document.createElement("pre");
  text.textContent = fault;
  text.tabIndex = 0;
  text.setAttribute("aria-label", "What is wrong, as on the terminal");
  panel.replaceChildren(head, text);
}

function show_mode(fault, shown) {
  const mode = at("mode");
  const stale = Boolean(fault && shown);
  mode.hidden = !stale && !page.tried;
  mode.classList.toggle("stale", stale);
  at("sheet").classList.toggle("stale-pages", stale && !page.tried);
  at("mode-why").hidden = !fault;
  at("mode-order").hidden = !page.tried;
  const sum = page.sums.find((sum) => sum.what === "to buy") ?? page.sums[0];
  const order = sum && sum.before !== sum.after ? `: ${sum.what} ${sum.after} instead of ${sum.before}` : "";
  at("mode-said").textContent = page.tried
    ? `With ${wishes.words()}${order}. The file is as it was.`
    : "The last pages that were right. The file has changed since.";
}

function show_remarks(remarks) {
  at("remarks").hidden = remarks.length === 0;
  at("remarks-list").replaceChildren(
    ...remarks.map(({ matter, figures, help, spot }) => {
      const item = element("li", "");
      item.append(element("h3", matter), element("p", figures));
      if (spot) {
        const line = element("pre", "");
        line.append(spot.before, element("mark", spot.value), spot.after);
        item.append(element("p", `${spot.file}, line ${spot.line}`, "where"), line);
      }
      item.append(...help.map((sentence) => element("p", sentence, "help")));
      return item;
    }),
  );
}

// The link to the file of the handout in view.
function shown_changed() {
  const link = at("pdf");
  const handout = sheets.handout();
  const version = page.tried ?? page.now?.shown;
  link.hidden = !handout;
  if (!handout) return;
  link.href = `/pdf/${version.version}/${handout.word}.pdf`;
  link.textContent = `Open ${handout.word}.pdf`;
}

function lost() {
  at("status").classList.add("lost");
  at("status").textContent = "The preview has ended. Start it again in the terminal; this page then follows.";
}

// Hears of news. A page that nobody sees does not listen: browsers have few connections.
let news = null;
let run = null;
function listen() {
  if (document.hidden) {
    news?.close();
    news = null;
    return;
  }
  if (news) return;
  news = new EventSource("/news");
  news.addEventListener("news", (event) => {
    const [of_run] = event.data.split(" ");
    if (run !== null && run !== of_run) {
      location.reload();
      return;
    }
    run = of_run;
    look();
  });
  news.addEventListener("error", () => {
    lost();
    if (news?.readyState === EventSource.CLOSED) {
      news = null;
      setTimeout(listen, 2000);
    }
  });
}

document.addEventListener("visibilitychange", listen);
at("try").open = !matchMedia("(max-width: 60rem)").matches;
listen();
