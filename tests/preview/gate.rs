//! Only a page of this run, from this machine, is answered.

use super::client::Client;
use crate::lesson_tools::SMALL;
use serde_json::json;
use std::fs;
use std::io::{Read, Write};
use std::net::TcpStream;

fn client() -> (tempfile::TempDir, Client) {
    let folder = tempfile::tempdir().unwrap();
    let lesson = folder.path().join("small.yaml");
    fs::write(&lesson, SMALL).unwrap();
    let client = Client::of(&lesson);
    (folder, client)
}

#[test]
fn it_is_served_to_this_machine_alone() {
    let (_folder, client) = client();
    assert!(client.host().starts_with("127.0.0.1:"), "{}", client.host());
}

#[test]
fn only_its_own_names_are_answered() {
    let (_folder, client) = client();
    let port = client.host().rsplit(':').next().unwrap().to_owned();
    for host in [format!("127.0.0.1:{port}"), format!("localhost:{port}")] {
        assert_eq!(client.ask("GET", "/now", &[&format!("Host: {host}")], "").status, 200);
    }
    for host in [
        "paint.invalid".to_owned(),
        format!("paint.invalid:{port}"),
        "127.0.0.1".to_owned(),
        "127.0.0.1:1".to_owned(),
        format!("127.0.0.1.paint.invalid:{port}"),
        format!("localhost.:{port}"),
        format!("[::1]:{port}"),
    ] {
        let answer = client.ask("GET", "/", &[&format!("Host: {host}")], "");
        assert_eq!(answer.status, 421, "{host}: {answer:?}");
        assert!(!answer.body.contains(client.token()));
    }
    let two = [format!("Host: {}", client.host()), "Host: paint.invalid".to_owned()];
    for lines in [&two[..], &[]] {
        let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
        let status = client.ask("GET", "/", &lines, "").status;
        assert!([400, 421].contains(&status), "{status}");
    }
    let whole = format!(
        "GET http://paint.invalid/ HTTP/1.1\r\nHost: {}\r\nConnection: close\r\n\r\n",
        client.host()
    );
    assert_eq!(client.raw(&whole).status, 421);
}

#[test]
fn another_site_is_refused() {
    let (_folder, client) = client();
    let host = format!("Host: {}", client.host());
    for line in [
        "Sec-Fetch-Site: cross-site",
        "Sec-Fetch-Site: same-site",
        "Origin: http://paint.invalid",
        "Origin: null",
    ] {
        let answer = client.ask("GET", "/", &[&host, line], "");
        assert_eq!(answer.status, 403, "{line}");
    }
    assert_eq!(client.ask("GET", "/", &[&host, "Sec-Fetch-Site: none"], "").status, 200);
}

#[test]
fn a_change_needs_origin_kind_and_token() {
    let (_folder, client) = client();
    let version = client.now()["shown"]["version"].clone();
    let body = json!({"version": version, "wish": {"students": 3}});
    assert_eq!(client.post("/try", &body).status, 200);
    let port = client.host().rsplit(':').next().unwrap().to_owned();
    // Which line is bent, how (`None` leaves it out), and what is answered.
    let bent: [(usize, Option<String>, u16); 9] = [
        (0, Some("Host: paint.invalid".to_owned()), 421),
        (1, None, 403),
        (1, Some("Origin: http://paint.invalid".to_owned()), 403),
        (1, Some(format!("Origin: https://127.0.0.1:{port}")), 403),
        (1, Some(format!("Origin: http://localhost:{port}")), 403),
        (2, None, 415),
        (2, Some("Content-Type: text/plain".to_owned()), 415),
        (3, None, 403),
        (3, Some(format!("X-Puddlebook-Token: {}", "0".repeat(client.token().len()))), 403),
    ];
    for (line, instead, status) in bent {
        let mut head = client.head();
        match &instead {
            Some(instead) => head[line] = instead.clone(),
            None => drop(head.remove(line)),
        }
        let lines: Vec<&str> = head.iter().map(String::as_str).collect();
        for path in ["/try", "/write"] {
            let answer = client.ask("POST", path, &lines, &body.to_string());
            assert_eq!(answer.status, status, "line {line} as {instead:?}: {answer:?}");
        }
    }
    let mut head = client.head();
    head[4] = "Sec-Fetch-Site: cross-site".to_owned();
    let lines: Vec<&str> = head.iter().map(String::as_str).collect();
    assert_eq!(client.ask("POST", "/write", &lines, &body.to_string()).status, 403);
}

#[test]
fn every_answer_forbids_what_no_page_needs() {
    let (_folder, client) = client();
    let picture = client.now()["shown"]["handouts"][0]["pages"][0].as_str().unwrap().to_owned();
    let picture = format!("/picture/{picture}");
    for path in ["/", "/now", "/page.js", "/lato/regular.ttf", "/pdf/1/order.pdf", &picture, "/no"]
    {
        let head = client.get(path).head;
        for line in [
            "x-content-type-options: nosniff",
            "cache-control: no-store",
            "referrer-policy: no-referrer",
            "frame-ancestors 'none'",
            "cross-origin-resource-policy: same-origin",
        ] {
            assert!(head.contains(line), "{path} lacks {line}:\n{head}");
        }
        assert!(!head.contains("access-control-allow"), "{path}: {head}");
    }
    let policy = client.get("/").head;
    assert!(policy.contains("content-security-policy: default-src 'none'; script-src 'self'"));
}

#[test]
fn no_path_reaches_the_disk() {
    let (folder, client) = client();
    fs::write(folder.path().join("order.pdf"), "secret").unwrap();
    for path in [
        "/small.yaml",
        "/../small.yaml",
        "/pdf/1/../small.yaml",
        "/pdf/1/..%2fsmall.yaml",
        "/pdf/1/small.yaml",
        "/pdf/99/order.pdf",
        "/pdf/-1/order.pdf",
        "/picture/..%2f..%2fsmall.yaml",
        "/picture/0000000000000000",
        "/lato/..%2f..%2fsmall.yaml",
        "//etc/passwd",
    ] {
        let answer = client.get(path);
        assert!([400, 404].contains(&answer.status), "{path}: {answer:?}");
        assert!(!answer.body.contains("A small class"), "{path}");
    }
}

#[test]
fn bodies_and_heads_are_bounded() {
    let (_folder, client) = client();
    let head = client.head();
    let lines: Vec<&str> = head.iter().map(String::as_str).collect();
    let large = format!("{{\"version\": 1, \"wish\": {{}}, \"x\": \"{}\"}}", "x".repeat(70_000));
    assert_eq!(client.ask("POST", "/try", &lines, &large).status, 413);
    for odd in [
        "",
        "{",
        "[]",
        "{\"version\": -1, \"wish\": {}}",
        "{\"version\": 1, \"wish\": {\"path\": \"x\"}}",
    ] {
        let status = client.ask("POST", "/try", &lines, odd).status;
        assert!([400, 422].contains(&status), "{odd}: {status}");
    }
    assert_eq!(client.ask("DELETE", "/now", &lines, "").status, 405);
}

#[test]
fn pages_that_listen_have_so_many_places() {
    let (_folder, client) = client();
    let listening: Vec<_> = (0..16).map(|_| client.listen()).collect();
    assert_eq!(client.get("/news").status, 503);
    drop(listening);
    // A place is free again once the server has seen that its page is gone.
    let host = client.host();
    let is_free = (0..10_000).any(|_| {
        let mut stream = TcpStream::connect(&host).unwrap();
        write!(stream, "GET /news HTTP/1.1\r\nHost: {host}\r\n\r\n").unwrap();
        let mut line = [0; 12];
        stream.read_exact(&mut line).unwrap();
        &line == b"HTTP/1.1 200"
    });
    assert!(is_free);
}

#[test]
fn connections_without_a_question_leave_room_for_others() {
    let (_folder, client) = client();
    let idle: Vec<_> = (0..40).map(|_| TcpStream::connect(client.host()).unwrap()).collect();
    assert_eq!(client.get("/now").status, 200);
    drop(idle);
}
