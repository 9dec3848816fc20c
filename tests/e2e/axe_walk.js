// A walk through every screen of the app that is new to this browser, for axe-core to look at each of them.
//
// Run in the page by the end-to-end tests and by `cargo xtask measure`, after axe-core. `axeWalk.names` are the screens in
// order; `axeWalk.go(i)` goes on from the one before to that one; `axeWalk.check(i, look)` says what axe-core finds there.

window.axeWalk = (() => {
  const PATIENCE_MS = 20000;
  const part = (name) => document.querySelector(`[data-part="${name}"]`);
  const until = async (look, what) => {
    const since = performance.now();
    for (;;) {
      const it = look();
      if (it) return it;
      if (performance.now() - since > PATIENCE_MS) throw new Error(`waited in vain for ${what}`);
      await new Promise(requestAnimationFrame);
    }
  };
  const seen = (name) => until(() => part(name), name);
  const gone = (name) => until(() => !part(name), `${name} to go`);
  const tap = async (name) => (await seen(name)).click();
  const close = async (panel) => {
    await tap("panel-close");
    await gone(panel);
  };
  const tapIn = async (css) => (await until(() => document.querySelector(css), css)).click();
  const endRest = async () => {
    if (part("rest-hold")) part("rest-hold").click();
    (await seen("rest-end")).click();
    await gone("rest");
  };
  const done = () => document.querySelectorAll(".notch.done").length;
  // A tap right after another is taken for a slip and is given again.
  const log = async () => {
    const before = done();
    await seen("log");
    await until(() => {
      part("log")?.click();
      return done() > before;
    }, "a logged set");
  };
  const logAll = async () => {
    while (!part("end")) {
      if (part("rest")) await endRest();
      else if (part("log")) await log();
      await new Promise(requestAnimationFrame);
    }
  };
  const type = async (name, text) => {
    const field = await seen(name);
    field.value = text;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const more = async (which, panel) => {
    await tap("more");
    await seen("more-panel");
    if (which) await tap(which);
    await seen(panel);
  };
  let link = "";

  // Name, whether it belongs to the floor (there contrast is 7:1), and how to come to it from the one before.
  const screens = [
    ["welcome", false, () => seen("welcome")],
    ["choice of a sheet", false, async () => { await tap("welcome-open"); await seen("choose"); }],
    ["sheets", false, async () => { await tap("go-sheets"); await seen("sheet"); }],
    ["lines of a sheet", false, async () => { await tap("write-lines"); await seen("lines-sum"); }],
    ["draft", false, async () => {
      await tap("go-sheets");
      await tap("sheet");
      await tap("change-sheet");
      await seen("draft-rows");
    }],
    ["draft, arranged", false, async () => { await tap("draft-arrange"); await seen("draft-up"); }],
    ["draft, one block", false, async () => {
      await tapIn(`li:nth-child(2) [data-part="draft-block"]`);
      await seen("draft-one");
    }],
    ["draft, sets", false, async () => {
      await tapIn(`li:nth-child(2) [data-part="set-line"]`);
      await seen("set-panel");
    }],
    ["draft, exercise", false, async () => {
      await tap("line-done");
      await gone("set-panel");
      await tap("draft-exercise-other");
      await tap("pattern-0");
      await seen("exercise-take");
    }],
    ["sheet", false, async () => { await tap("go-sheets"); await tap("sheet"); await seen("sheet-look"); }],
    ["share", false, async () => {
      await tap("share-sheet");
      await tap("share-qr");
      await seen("qr");
      link = part("share-link").value;
    }],
    ["shared", false, async () => { location.hash = new URL(link).hash; await seen("shared-known"); }],
    ["exercises", false, async () => {
      await tap("go-sheets");
      await tap("exercises-open");
      await seen("exercise-row");
    }],
    ["exercise", false, async () => { await tap("exercise-row"); await seen("exercise-look"); }],
    ["exercise, written", false, async () => { await tap("exercise-change"); await seen("exercise-write"); }],
    ["programme", false, async () => {
      await tap("go-sheets");
      await tap("programme-open");
      await tap("programme-add");
      await tap("light-on");
      await seen("light-every");
    }],
    ["programme, days", false, async () => { await tap("plan-days"); await seen("day-0-1"); }],
    ["kit", false, async () => {
      await tap("go-kit");
      await seen("kit");
      for (const fold of document.querySelectorAll("details")) fold.open = true;
    }],
    ["ledger, empty", false, async () => { await tap("go-ledger"); await seen("ledger-empty"); }],
    ["year, empty", false, async () => {
      await tapIn(`[data-part="ledger-pictures"] a[href^="#/ledger/year/"]`);
      await seen("year-chart");
    }],
    ["body, empty", false, async () => {
      await tap("go-ledger");
      await tapIn(`[data-part="ledger-pictures"] a[href="#/ledger/body"]`);
      await tap("body-another");
      await seen("body-new");
    }],
    ["body", false, async () => {
      await type("body-name", "waist");
      await type("body-value", "84.5");
      await tap("body-keep");
      await type("body-weigh", "82.5");
      await tap("body-weigh-keep");
      await seen("body-mass-chart-table");
      for (const open of document.querySelectorAll(`[data-part$="-table"], [data-part$="-save"]`)) open.click();
      await seen("body-own-png");
    }],
    ["body, corrected", false, async () => { await tap("body-entry"); await seen("body-panel"); }],
    ["body, entry removed", false, async () => { await tap("body-remove"); await seen("body-gone"); }],
    ["set", true, async () => { await tap("go-floor"); await tap("begin"); await seen("log"); }],
    ["set, load", true, async () => { await tap("load"); await seen("load-panel"); }],
    ["set, reserve", true, async () => {
      await close("load-panel");
      await tap("reserve");
      await seen("reserve-panel");
    }],
    ["more", true, async () => { await close("reserve-panel"); await more(null, "more-panel"); }],
    ["heat", true, async () => { await close("more-panel"); await more("heat", "heat-panel"); }],
    ["order", true, async () => { await close("heat-panel"); await more("order", "order-panel"); }],
    ["note", true, async () => { await close("order-panel"); await more("note", "note-panel"); }],
    ["another exercise", true, async () => { await close("note-panel"); await more("swap", "swap-panel"); }],
    ["set by ear", true, async () => {
      await close("swap-panel");
      await tap("cues-begin");
      await seen("count");
    }],
    ["rest", true, async () => { await log(); await seen("rest"); await until(() => ["saved", "gespeichert"].includes(part("saved").innerText), "saved"); }],
    ["rest, corrected", true, async () => { await tap("amend"); await seen("amend-panel"); }],
    ["rest, held", true, async () => {
      await tap("amend-close");
      await gone("amend-panel");
      await tap("rest-hold");
      await seen("rest-end");
    }],
    ["set with plates", true, async () => {
      for (let sets = 0; sets < 6 && !part("plates"); sets += 1) {
        if (part("rest")) await endRest();
        if (!part("plates")) await log();
      }
      if (part("rest")) await endRest();
      await seen("plates");
    }],
    ["rest with plates", true, async () => { await log(); await seen("rest"); await seen("plates"); }],
    ["all sets done", true, async () => { await logAll(); await seen("end"); }],
    ["summary", true, async () => {
      await until(() => {
        part("end")?.click();
        return part("finish");
      }, "the summary");
    }],
    ["ledger", false, async () => { await tap("rpe-7"); await tap("put-away"); await seen("session"); }],
    ["ledger, found", false, async () => {
      part("find-days").open = true;
      const field = part("find-text");
      field.value = "squat";
      field.dispatchEvent(new Event("change", { bubbles: true }));
      await seen("find-all");
    }],
    ["calendar", false, async () => {
      await tap("find-all");
      await tap("ledger-as-1");
      await tapIn(".day.done");
      await until(() => document.querySelector('.day.done[aria-pressed="true"]'), "a day chosen");
    }],
    ["weeks", false, async () => {
      await tap("ledger-weeks");
      await seen("week-sums");
      part("how-counted").open = true;
      await tap("weeks-sets-table");
      await tap("weeks-muscles-table");
    }],
    ["report", false, async () => {
      await tap("go-ledger");
      await tap("ledger-report");
      await seen("report-exercises");
    }],
    ["exercises done", false, async () => {
      await tap("go-ledger");
      await tapIn(`[data-part="ledger-pictures"] a[href="#/ledger/exercise"]`);
      await seen("history-row");
    }],
    ["exercise over time", false, async () => {
      await tapIn(`[data-part="history-row"][href$="front-squat"]`);
      await seen("history-volume-step");
      for (const open of document.querySelectorAll(`[data-part$="-table"], [data-part$="-save"]`)) open.click();
      await seen("history-volume-png");
    }],
    ["year", false, async () => {
      await tap("go-ledger");
      await tapIn(`[data-part="ledger-pictures"] a[href^="#/ledger/year/"]`);
      await seen("year-chart-step");
      await tap("year-chart-table");
    }],
    ["session", false, async () => {
      await tap("go-ledger");
      await tap("ledger-as-0");
      await tap("session");
      await seen("session-record");
    }],
    ["session, forgotten set", false, async () => { await tap("forgotten"); await seen("forgotten-panel"); }],
    ["session, note", false, async () => {
      await close("forgotten-panel");
      await tap("annotate");
      await seen("annotate-panel");
    }],
    ["session, corrected", false, async () => {
      await close("annotate-panel");
      await tap("set");
      await seen("correct-panel");
    }],
    ["two periods", false, async () => {
      await close("correct-panel");
      location.hash = "/ledger/compare";
      await seen("compared");
    }],
    ["set with a band", true, async () => {
      await tap("go-sheets");
      await tap("write-lines");
      await type("lines", "# Bands\nBand row: 3 × 12; band light");
      await until(() => part("lines-sum")?.innerText.startsWith("Bands"), "the lines to be read");
      await tap("lines-keep");
      await seen("sheet-look");
      await tap("begin");
      await seen("log");
    }],
    ["another band", true, async () => { await tap("load"); await seen("band-panel"); }],
    ["set with another band", true, async () => {
      await tap("band-take-1");
      await gone("band-panel");
    }],
    ["lifters", false, async () => {
      await more("end-ask", "end-now");
      await tap("end-now");
      await until(() => {
        part("end")?.click();
        return part("put-away");
      }, "the end");
      await tap("put-away");
      location.hash = "/kit/lifters";
      const name = await seen("lifter-name");
      name.value = "Bea";
      name.dispatchEvent(new Event("input", { bubbles: true }));
      await tap("lifter-add");
      await seen("lifter-1-remove");
    }],
    ["lifters, removal", false, async () => { await tap("lifter-1-remove"); await seen("lifter-remove-panel"); }],
    ["who trains", false, async () => {
      await close("lifter-remove-panel");
      await tap("who");
      await seen("who-panel");
    }],
    ["another lifter's welcome", false, async () => { await tap("who-1"); await seen("welcome"); }],
    ["two at one rack, asked", false, async () => {
      await tap("welcome-open");
      await tap("who");
      await tap("who-0");
      await until(() => part("who")?.innerText.includes("1"), "the first lifter");
      location.hash = "/";
      await tap("with-1");
      await tap("begin");
      await seen("pair-panel");
    }],
    ["two at one rack", true, async () => { await tap("pair-same"); await seen("pair"); await seen("log"); }],
    ["two at one rack, the other", true, async () => {
      await until(() => {
        if (document.querySelector(".pair.right")) return true;
        part("log")?.click();
        return false;
      }, "the turn");
    }],
  ];

  const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
  const COLOURS = ["color-contrast", "link-in-text-block"];
  const told = (found) => found.flatMap((rule) => rule.nodes.map((node) => ({
    rule: rule.id,
    at: node.target.join(" "),
    drawn: Boolean(document.querySelector(node.target[0])?.closest("svg")),
    why: [...node.any, ...node.all, ...node.none].map((check) => `${check.message}`).join("; "),
  })));

  return {
    names: screens.map(([name]) => name),
    go: (i) => screens[i][2](),
    /** Everything in the first look, and in the others what depends on colours. */
    check: async (i, look, whole) => {
      document.documentElement.dataset.theme = look;
      const [name, floor] = screens[i];
      const enhanced = { "color-contrast-enhanced": { enabled: floor } };
      const options = whole
        ? { runOnly: { type: "tag", values: TAGS }, rules: { "target-size": { enabled: true }, ...enhanced } }
        : { runOnly: { type: "rule", values: floor ? [...COLOURS, "color-contrast-enhanced"] : COLOURS } };
      // What lies under a panel was looked at before the panel was opened.
      const context = document.querySelector('[role="dialog"]') ?? document;
      const found = await axe.run(context, { ...options, resultTypes: ["violations", "incomplete"] });
      return { name, violations: told(found.violations), incomplete: told(found.incomplete), passed: found.passes.length };
    },
  };
})();
