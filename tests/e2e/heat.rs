//! Temperature and humidity typed in on the floor: the caution, and the longer rest that follows.

use super::browser::Browser;
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_rest, log};

/// Minutes and seconds as seconds.
fn seconds(clock: &str) -> u32 {
    let (minutes, seconds) = clock.trim().split_once(':').expect("m:ss");
    minutes.parse::<u32>().unwrap() * 60 + seconds.parse::<u32>().unwrap()
}

#[tokio::test]
async fn the_heat_is_typed_in_cautions_and_makes_the_next_rest_longer() {
    let server = Server::start();
    let browser = Browser::start("heat");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    log(&person).await;
    let cool = seconds(&person.read("rest").await);
    assert!(!person.has("rest-because").await);
    end_rest(&person).await;

    person.tap("more").await;
    person.tap("heat").await;
    person.type_into("heat-temperature", "35").await;
    person.type_into("heat-humidity", "101").await;
    person.tap("heat-use").await;
    person.reads("heat-wrong", "0 to 100 percent").await;
    person.type_into("heat-humidity", "60").await;
    // 113 °F by the formula of the National Weather Service.
    person.reads("heat-index", "Heat index 45 °C: danger").await;
    person.reads("heat-caution", "another time").await;
    picture(&person, "floor-heat").await;
    person.tap("heat-use").await;
    person.gone("heat-panel").await;
    person.reads("cautions", "Heat, danger").await;
    person.reads("cautions", "Hands sweat").await;
    picture(&person, "floor-heat-board").await;

    log(&person).await;
    person
        .reads("rest-because", "half as long again in the heat")
        .await;
    let hot = seconds(&person.read("rest").await);
    // Both were read within seconds of their beginning.
    assert!(hot > cool + cool / 4, "{hot} s after {cool} s");
    picture(&person, "floor-heat-rest").await;
}
