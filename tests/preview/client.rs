//! A browser's part, spoken by hand, so that every header is ours to bend.

use puddlebook::preview::{Preview, Serving};
use serde_json::Value;
use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::time::Duration;

/// A server that is silent for so long has failed.
const PATIENCE: Duration = Duration::from_secs(120);

/// A preview of one lesson, and how to ask it.
pub struct Client {
    serving: Serving,
    token: String,
}

/// What came back.
#[derive(Debug)]
pub struct Answer {
    pub status: u16,
    /// In small letters.
    pub head: String,
    pub body: String,
}

impl Answer {
    /// Of a body in JSON.
    pub fn json(&self) -> Value {
        assert_eq!(self.status, 200, "{self:?}");
        serde_json::from_str(&self.body).unwrap()
    }
}

/// A preview with no choices of the command line.
pub fn preview_of(lesson: &Path) -> Preview {
    Preview {
        lesson: lesson.to_owned(),
        port: 0,
        dress: Box::new(|_| {}),
        templates: Box::new(|| Ok(BTreeMap::new())),
        advise: Box::new(|_| Vec::new()),
        templates_folder: None,
    }
}

impl Client {
    pub fn of(lesson: &Path) -> Self {
        Self::with(preview_of(lesson))
    }

    pub fn with(preview: Preview) -> Self {
        let mut client = Self { serving: preview.start().unwrap(), token: String::new() };
        let page = client.get("/");
        let token = page.body.split("name=\"token\" content=\"").nth(1).unwrap();
        client.token = token.split('"').next().unwrap().to_owned();
        client
    }

    pub fn token(&self) -> &str {
        &self.token
    }

    pub fn host(&self) -> String {
        self.serving.address().to_string()
    }

    fn connect(&self) -> TcpStream {
        let stream = TcpStream::connect(self.serving.address()).unwrap();
        stream.set_read_timeout(Some(PATIENCE)).unwrap();
        stream
    }

    /// Sends these bytes and reads until the server closes.
    pub fn raw(&self, request: &str) -> Answer {
        let mut stream = self.connect();
        let _ = stream.write_all(request.as_bytes());
        // A server that refuses need not take the whole request; what it said counts.
        let (mut bytes, mut part) = (Vec::new(), [0; 4096]);
        while let Ok(length @ 1..) = stream.read(&mut part) {
            bytes.extend(&part[..length]);
        }
        let text = String::from_utf8_lossy(&bytes);
        let (head, body) = text.split_once("\r\n\r\n").unwrap_or((&text, ""));
        let status = head.split(' ').nth(1).and_then(|status| status.parse().ok()).unwrap_or(0);
        Answer { status, head: head.to_lowercase(), body: body.to_owned() }
    }

    /// A request with these lines of a head besides `Connection`.
    pub fn ask(&self, method: &str, path: &str, lines: &[&str], body: &str) -> Answer {
        let lines: String = lines.iter().map(|line| format!("{line}\r\n")).collect();
        let length = body.len();
        self.raw(&format!(
            "{method} {path} HTTP/1.1\r\n{lines}Content-Length: {length}\r\nConnection: close\r\n\r\n{body}"
        ))
    }

    pub fn get(&self, path: &str) -> Answer {
        self.ask("GET", path, &[&format!("Host: {}", self.host())], "")
    }

    /// The head of a change, as the page sends it.
    pub fn head(&self) -> Vec<String> {
        let host = self.host();
        vec![
            format!("Host: {host}"),
            format!("Origin: http://{host}"),
            "Content-Type: application/json".to_owned(),
            format!("X-Puddlebook-Token: {}", self.token),
            "Sec-Fetch-Site: same-origin".to_owned(),
        ]
    }

    pub fn post(&self, path: &str, body: &Value) -> Answer {
        let head = self.head();
        let lines: Vec<&str> = head.iter().map(String::as_str).collect();
        self.ask("POST", path, &lines, &body.to_string())
    }

    pub fn now(&self) -> Value {
        self.get("/now").json()
    }

    pub fn listen(&self) -> News {
        let mut stream = self.connect();
        write!(stream, "GET /news HTTP/1.1\r\nHost: {}\r\n\r\n", self.host()).unwrap();
        let mut news = News(BufReader::new(stream));
        news.wait();
        news
    }
}

/// Events as they come.
pub struct News(BufReader<TcpStream>);

impl News {
    /// Waits for the next event; its data.
    pub fn wait(&mut self) -> String {
        loop {
            let mut line = String::new();
            assert!(self.0.read_line(&mut line).unwrap() > 0, "the server went silent");
            if let Some(data) = line.strip_prefix("data: ") {
                return data.trim().to_owned();
            }
        }
    }

    /// Waits until what is now is as wanted: one save may be several pieces of news.
    pub fn until(&mut self, client: &Client, wanted: impl Fn(&Value) -> bool) -> Value {
        loop {
            let now = client.now();
            if wanted(&now) {
                return now;
            }
            self.wait();
        }
    }
}

/// The pictures of a handout of a version.
pub fn pages(shown: &Value, word: &str) -> Vec<String> {
    let handouts = shown["handouts"].as_array().unwrap();
    let handout = handouts.iter().find(|handout| handout["word"] == word).unwrap();
    let pages = handout["pages"].as_array().unwrap().iter();
    pages.map(|page| page.as_str().unwrap().to_owned()).collect()
}
