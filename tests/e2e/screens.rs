//! A walk through every screen and state: the pictures in `docs/screens.md`, and the same walk in another language.

use super::axe::{WALK, promised};
use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::looks::{look, resize, shots};
use super::person::Person;
use super::server::Server;
use base64::Engine as _;
use fantoccini::wd::TimeoutConfiguration;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Width of a phone, and how high a picture is at least and at most.
const WIDTH: u32 = 390;
const HEIGHT: u32 = 844;
const HEIGHT_MAX: u32 = 2400;

/// A window of 1280 × 1024 at four times its size (WCAG 2.2, 1.4.10), as narrow as the narrowest phone.
const ENLARGED: (u32, u32) = (320, 256);

/// The looks that are pictured.
const LOOKS: [&str; 2] = ["dark", "light"];

/// The name of a screen as a file's name: "draft, one block" is `draft-one-block`.
fn slug(name: &str) -> String {
    let plain = name.replace('\'', "");
    let words: Vec<&str> = plain.split(|c: char| !c.is_alphanumeric()).collect();
    words
        .into_iter()
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join("-")
}

fn docs() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("docs")
}

/// Opens the app in a language and makes ready for the walk; gives the names of the screens.
async fn set_out(person: &Person) -> Vec<String> {
    let patience = TimeoutConfiguration::new(Some(Duration::from_secs(60)), None, None);
    let taken = person.client.update_timeouts(patience).await;
    taken.expect("the driver takes a timeout");
    resize(person, WIDTH, HEIGHT).await;
    person.see("welcome").await;
    person.run(WALK).await;
    let names = person.run("return axeWalk.names").await;
    let names = names.as_array().expect("the walk names screens");
    names
        .iter()
        .map(|name| name.as_str().expect("a name").to_owned())
        .collect()
}

/// What is cut off, broken, or sticks out to the side in a small window. Tables are scrolled sideways, and a name in a
/// list may end in dots where all of it is told elsewhere.
const CUT_OFF: &str = "
    const cut = [];
    const out = document.documentElement.scrollWidth - innerWidth;
    if (out > 0) cut.push(`the page sticks out by ${out} px`);
    for (const element of document.querySelectorAll('main, main *, [role=dialog], [role=dialog] *')) {
      const style = getComputedStyle(element);
      // What is clipped away whole is heard, not seen.
      const clips = style.clipPath === 'none' && style.overflowX !== 'visible' && style.textOverflow !== 'ellipsis';
      const scrolled = element.querySelector('table') || element.closest('svg') || element.matches('textarea, input, select');
      if (clips && !scrolled && element.scrollWidth > element.clientWidth + 1)
        cut.push(`${element.className || element.tagName} is cut off by ${element.scrollWidth - element.clientWidth} px`);
    }
    // A word, or a part of it between soft hyphens, is broken where not even a hyphen is put: not every browser knows
    // where that may stand.
    for (const element of document.querySelectorAll('.choice, .stepper-figure, h1, h2')) {
      element.style.hyphens = 'manual';
      const texts = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
      while (texts.nextNode()) {
        const text = texts.currentNode;
        for (const word of text.data.matchAll(/[\\p{L}\\p{N}]+/gu)) {
          const lines = new Set();
          for (let at = word.index; at < word.index + word[0].length; at++) {
            const letter = document.createRange();
            letter.setStart(text, at);
            letter.setEnd(text, at + 1);
            // The hyphen at the end of a line comes before the letter that stands behind it.
            const seen = [...letter.getClientRects()].pop();
            if (seen) lines.add(Math.round(seen.top));
          }
          if (lines.size > 1) cut.push(`${word[0]} is broken`);
        }
      }
      element.style.removeProperty('hyphens');
    }
    return cut;";

/// What is cut off or broken in the smallest window, each in a line.
async fn cut_off(person: &Person, name: &str) -> Vec<String> {
    resize(person, ENLARGED.0, ENLARGED.1).await;
    let cut = person.run(CUT_OFF).await;
    resize(person, WIDTH, HEIGHT).await;
    let cut = cut.as_array().expect("a list").clone();
    cut.iter().map(|what| format!("{name}: {what}")).collect()
}

/// A picture of the whole page, as WebP.
async fn picture(person: &Person) -> Vec<u8> {
    let script = "return document.documentElement.scrollHeight";
    let height = person.run(script).await.as_u64().unwrap_or(0);
    let height = u32::try_from(height).unwrap_or(HEIGHT_MAX);
    resize(person, WIDTH, height.clamp(HEIGHT, HEIGHT_MAX)).await;
    let wanted = json!({ "format": "webp", "quality": 70 });
    let taken = person.devtools("Page.captureScreenshot", wanted).await;
    resize(person, WIDTH, HEIGHT).await;
    let data = taken["data"].as_str().expect("a picture");
    base64::prelude::BASE64_STANDARD
        .decode(data)
        .expect("a picture")
}

#[tokio::test]
async fn every_screen_has_its_picture_in_the_docs() {
    if !only_in(
        &[Engine::Chromium],
        "only Chromium's devtools give the window every size and look",
    ) {
        return;
    }
    let folder = shots().map(|folder| folder.join("screens"));
    let server = Server::start();
    let browser = Browser::start("screens");
    let person = Person::open(&browser, &server).await;
    let names = set_out(&person).await;
    if let Some(folder) = &folder {
        std::fs::create_dir_all(folder).expect("a folder for pictures");
    }
    let (mut rows, mut cut) = (String::new(), Vec::new());
    for (at, name) in names.iter().enumerate() {
        promised(&person, &format!("axeWalk.go({at})")).await;
        let slug = slug(name);
        let mut row = format!("| {name} |");
        for theme in LOOKS {
            let file = format!("{slug}-{theme}.webp");
            row += &format!(" ![{name}, {theme}](shots/screens/{file}) |");
            // Pictures are taken again only when somebody asks: the walk alone tells whether each is there.
            if let Some(folder) = &folder {
                look(&person, theme).await;
                std::fs::write(folder.join(file), picture(&person).await)
                    .expect("a picture is kept");
            } else {
                let kept = docs().join("shots/screens").join(&file);
                assert!(
                    kept.is_file(),
                    "docs/shots/screens/{file} is missing: see DEVELOPERS.md, “Tests”"
                );
            }
        }
        cut.extend(cut_off(&person, name).await);
        rows += &row;
        rows += "\n";
    }
    assert!(
        cut.is_empty(),
        "at four times the size:\n{}",
        cut.join("\n")
    );
    let page = docs().join("screens.md");
    let written = std::fs::read_to_string(&page).expect("docs/screens.md");
    let (head, old) = written
        .split_once("| --- | --- | --- |\n")
        .expect("docs/screens.md has its table");
    if folder.is_some() && old != rows {
        std::fs::write(&page, format!("{head}| --- | --- | --- |\n{rows}"))
            .expect("the page is kept");
    } else {
        assert_eq!(
            old, rows,
            "docs/screens.md does not show the screens of the walk"
        );
    }
    person.close().await;
}

/// The words on screen that are also in the file of the language as English ones, and are called otherwise there.
const ENGLISH_LEFT: &str = "
    const german = arguments[0];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const left = [];
    const look = (text) => {
      const plain = (text ?? '').replace(/\\s+/g, ' ').trim();
      if (plain in german && german[plain] !== plain) left.push(plain);
    };
    // Words of the notation say that they are English.
    while (walker.nextNode())
      if (!walker.currentNode.parentElement.closest('body [lang=en]')) look(walker.currentNode.textContent);
    for (const element of document.querySelectorAll('[aria-label], [title], [placeholder], [alt]'))
      for (const name of ['aria-label', 'title', 'placeholder', 'alt']) look(element.getAttribute(name));
    return left;";

#[tokio::test]
async fn every_screen_in_german() {
    if !only_in(
        &[Engine::Chromium],
        "only Chromium's devtools give the window every size and look",
    ) {
        return;
    }
    let words = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/words/de.json");
    let words = std::fs::read_to_string(words).expect("the German words");
    let words: Value = serde_json::from_str(&words).expect("the German words are JSON");
    let german = words["texts"].as_object().expect("texts");
    // What is also a German word of its own cannot be told from one.
    let told: std::collections::BTreeSet<&str> =
        german.values().filter_map(Value::as_str).collect();
    let english: serde_json::Map<String, Value> = german
        .iter()
        .filter(|(english, _)| !told.contains(english.as_str()))
        .map(|(english, text)| (english.clone(), text.clone()))
        .collect();
    let english = Value::Object(english);
    let server = Server::start();
    let browser = Browser::start("german");
    let person = Person::open(&browser, &server).await;
    person.see("welcome").await;
    person
        .run("localStorage.setItem('stanchion.language', '\"de\"')")
        .await;
    person
        .client
        .refresh()
        .await
        .expect("the page is loaded anew");
    let names = set_out(&person).await;
    assert_eq!(
        person.run("return document.documentElement.lang").await,
        json!("de")
    );
    let folder = shots().map(|folder| folder.join("german"));
    if let Some(folder) = &folder {
        std::fs::create_dir_all(folder).expect("a folder for pictures");
    }
    let mut left = Vec::new();
    for (at, name) in names.iter().enumerate() {
        promised(&person, &format!("axeWalk.go({at})")).await;
        let found = person
            .client
            .execute(ENGLISH_LEFT, vec![english.clone()])
            .await;
        let found = found.expect("the script runs");
        let found = found.as_array().expect("a list").clone();
        left.extend(found.iter().map(|text| format!("{name}: {text}")));
        left.extend(cut_off(&person, name).await);
        if let Some(folder) = &folder {
            std::fs::write(
                folder.join(format!("{}.webp", slug(name))),
                picture(&person).await,
            )
            .expect("a picture");
        }
    }
    assert!(
        left.is_empty(),
        "English in the German app, or too wide:\n{}",
        left.join("\n")
    );
    person.close().await;
}
