//! The database behind the app's back: read, spoiled, laid out otherwise, from a page of the same origin where the app
//! does not run.

use super::person::Person;
use super::server::Server;
use serde_json::Value;

/// What every script begins with.
const BEGIN: &str = "
    const asked = (request) => new Promise((good, bad) => {
      request.onsuccess = () => good(request.result);
      request.onerror = () => bad(request.error);
    });
    const open = (version, upgrade, name = 'stanchion') => {
      const request = indexedDB.open(name, version);
      request.onupgradeneeded = () => upgrade?.(request.result);
      return asked(request);
    };
    const rows = async (db, shelf) => {
      const store = db.transaction(shelf).objectStore(shelf);
      const [keys, values] = [asked(store.getAllKeys()), asked(store.getAll())];
      const [all, each] = [await keys, await values];
      return all.map((key, at) => [key, each[at]]);
    };
    const put = (db, shelf, key, value) => new Promise((good, bad) => {
      const transaction = db.transaction(shelf, 'readwrite', { durability: 'strict' });
      transaction.objectStore(shelf).put(value, key);
      transaction.oncomplete = good;
      transaction.onabort = () => bad(transaction.error);
    });";

/// Leaves the app, so that nobody has the database open.
pub async fn leave(person: &Person, server: &Server) {
    let away = server.beside();
    person.client.goto(&away).await.expect("the host answers");
}

/// Runs the body of an async function on the database and gives what it returns; what it throws fails the test.
pub async fn on_disk(person: &Person, body: &str) -> Value {
    let script = format!(
        "{BEGIN} (async () => {{ {body} }})().then((it) => done({{ it }}), (why) => done({{ why: String(why) }}));"
    );
    let answer = person.run_later(&script).await;
    assert!(answer.get("why").is_none(), "{body}: {answer}");
    answer["it"].clone()
}

/// All rows of a shelf as (key, row).
pub async fn rows(person: &Person, shelf: &str) -> Vec<(String, String)> {
    rows_of(person, "stanchion", shelf).await
}

/// All rows of a shelf of that database as (key, row).
pub async fn rows_of(person: &Person, database: &str, shelf: &str) -> Vec<(String, String)> {
    let body = format!(
        "const db = await open(undefined, undefined, '{database}'); const all = await rows(db, '{shelf}'); db.close(); return all;"
    );
    let all = on_disk(person, &body).await;
    serde_json::from_value(all).expect("keys and rows are texts")
}

/// Opens the app again.
pub async fn return_to(person: &Person, server: &Server) {
    let url = server.url();
    person.client.goto(&url).await.expect("the app is served");
}
