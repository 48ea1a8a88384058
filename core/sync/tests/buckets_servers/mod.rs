//! Servers on loopback.

#![allow(dead_code, reason = "each test file uses a part")]

use std::collections::VecDeque;
use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::path::Path;
use std::process::Command;
use std::sync::{Arc, Mutex, mpsc};
use std::thread;
use std::time::{Duration, Instant};

use hyper_util::rt::{TokioExecutor, TokioIo};
use hyper_util::server::conn::auto::Builder;
use s3s::auth::SimpleAuth;
use s3s::service::S3ServiceBuilder;
use secundine_sync::{Bucket, Place, Secret, open};

pub const KEY: &str = "a-key";
pub const SECRET: &str = "a-secret-that-signs";

pub fn s3(endpoint: &str, bucket: &str, secret: &str) -> Box<dyn Bucket> {
    let secret = Secret(secret.to_owned());
    let (key, region) = (KEY.to_owned(), "garage".to_owned());
    open(&Place::S3 { endpoint: endpoint.to_owned(), region, bucket: bucket.to_owned(), key, secret }).unwrap()
}

pub fn webdav(url: &str) -> Box<dyn Bucket> {
    let (url, user, password) = (url.to_owned(), KEY.to_owned(), Secret(SECRET.to_owned()));
    open(&Place::WebDav { url, user, password }).unwrap()
}

/// A store that speaks S3 over a folder, whose folders are its buckets. Gives its address.
pub fn s3_over(folder: &Path) -> String {
    let mut service = S3ServiceBuilder::new(s3s_fs::FileSystem::new(folder).unwrap());
    service.set_auth(SimpleAuth::from_single(KEY, SECRET));
    let service = service.build();
    let (tell, told) = mpsc::channel();
    thread::spawn(move || {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
        runtime.block_on(async {
            let listener = tokio::net::TcpListener::bind("127.0.0.1:0").await.unwrap();
            tell.send(listener.local_addr().unwrap()).unwrap();
            loop {
                let (stream, _) = listener.accept().await.unwrap();
                stream.set_nodelay(true).unwrap();
                let service = service.clone();
                tokio::spawn(async move {
                    let _ = Builder::new(TokioExecutor::new()).serve_connection(TokioIo::new(stream), service).await;
                });
            }
        });
    });
    format!("http://{}", told.recv().unwrap())
}

/// What becomes of a request that came whole.
pub enum Do {
    /// These bytes are its answer, and the connection stays.
    Say(Vec<u8>),
    /// These bytes are its answer, and the connection is cut.
    Cut(Vec<u8>),
    /// Nothing until so many requests have come, then these bytes.
    Await(usize, Vec<u8>),
}

/// Head and body of a request.
type Asked = (String, Vec<u8>);

/// A server that answers as it is told, and everything else with 500.
pub struct Scripted {
    pub address: String,
    pub requests: Arc<Mutex<Vec<Asked>>>,
    script: Arc<Mutex<VecDeque<Do>>>,
}

impl Scripted {
    pub fn start(script: Vec<Do>) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = format!("http://{}", listener.local_addr().unwrap());
        let this = Self { address, requests: Arc::default(), script: Arc::new(Mutex::new(script.into())) };
        let (requests, script) = (Arc::clone(&this.requests), Arc::clone(&this.script));
        thread::spawn(move || {
            for stream in listener.incoming() {
                let (requests, script) = (Arc::clone(&requests), Arc::clone(&script));
                thread::spawn(move || serve(stream.unwrap(), &requests, &script));
            }
        });
        this
    }

    pub fn asked(&self) -> usize {
        self.requests.lock().unwrap().len()
    }

    pub fn head(&self, k: usize) -> String {
        self.requests.lock().unwrap()[k].0.clone()
    }
}

fn serve(mut stream: TcpStream, requests: &Mutex<Vec<Asked>>, script: &Mutex<VecDeque<Do>>) {
    while let Some(request) = request(&mut stream) {
        requests.lock().unwrap().push(request);
        let what = script.lock().unwrap().pop_front().unwrap_or_else(|| Do::Cut(answer(500, "", "")));
        match what {
            Do::Say(bytes) => drop(stream.write_all(&bytes)),
            Do::Cut(bytes) => return drop(stream.write_all(&bytes)),
            Do::Await(many, bytes) => {
                while requests.lock().unwrap().len() < many {
                    thread::sleep(Duration::from_millis(1));
                }
                drop(stream.write_all(&bytes));
            }
        }
    }
}

fn request(stream: &mut TcpStream) -> Option<Asked> {
    let mut bytes = Vec::new();
    let mut part = [0; 8192];
    loop {
        if let Some(end) = bytes.windows(4).position(|four| four == b"\r\n\r\n") {
            let head = String::from_utf8(bytes[..end].to_vec()).unwrap();
            let length = head.lines().find_map(|line| line.to_ascii_lowercase().strip_prefix("content-length: ")?.parse().ok());
            if bytes.len() >= end + 4 + length.unwrap_or(0) {
                return Some((head, bytes[end + 4..].to_vec()));
            }
        }
        match stream.read(&mut part) {
            Ok(0) | Err(_) => return None,
            Ok(read) => bytes.extend_from_slice(&part[..read]),
        }
    }
}

/// A status, further lines of the head, and a body.
pub fn answer(status: u16, more: &str, body: &str) -> Vec<u8> {
    format!("HTTP/1.1 {status} X\r\n{more}Content-Length: {}\r\n\r\n{body}", body.len()).into_bytes()
}

/// How long rclone takes to fetch what lies under a prefix, in seconds, and how many bytes that was; `from` as
/// `tests/garage/floor.py` has it.
pub fn floor(from: &[&str], prefix: &str, secret: &str) -> (f64, u64) {
    let into = tempfile::tempdir().unwrap();
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/garage/floor.py");
    let mut command = Command::new("python3");
    command.arg(script).args(from).arg(prefix).arg(into.path()).env("SECRET", secret);
    let output = command.output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let told: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    (told["seconds"].as_f64().unwrap(), told["bytes"].as_u64().unwrap())
}

/// Fetches all below a prefix, and says how long that took, in seconds, beside rclone.
pub fn beside_the_floor(bucket: &dyn Bucket, from: &[&str], prefix: &str, secret: &str) -> String {
    let started = Instant::now();
    let listed = bucket.list(prefix, None).unwrap();
    let names: Vec<String> = listed.iter().map(|one| one.name.clone()).collect();
    let mut fetched = 0;
    bucket.get_each(&names, 1 << 20, &mut |_, answer| {
        fetched += answer.unwrap().len() as u64;
        true
    });
    let ours = started.elapsed().as_secs_f64();
    let (floor, bytes) = floor(from, prefix.trim_end_matches('/'), secret);
    assert_eq!(bytes, fetched, "the same was fetched");
    format!("{} files, {fetched} bytes: ours {ours:.3} s, rclone {floor:.3} s, {:.2}", names.len(), ours / floor)
}
