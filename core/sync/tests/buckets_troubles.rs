//! Whatever a server or a line does comes out in a bucket's own words.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod buckets_servers;

use std::io::{Read, Write};
use std::net::TcpListener;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant, SystemTime};

use buckets_servers::{Do, SECRET, Scripted, answer, s3, webdav};
use secundine_sync::{Bucket, BucketError};

const NO_BUCKET: &str = "<?xml version=\"1.0\"?><Error><Code>NoSuchBucket</Code></Error>";
const NO_KEY: &str = "<?xml version=\"1.0\"?><Error><Code>NoSuchKey</Code></Error>";
const QUOTA: &str = "<Error><Code>AccessDenied</Code><Message>Object size quota is reached</Message></Error>";
const OTHER_QUOTA: &str = "<Error><Code>XMinioAdminBucketQuotaExceeded</Code></Error>";
const SKEWED: &str = "<Error><Code>RequestTimeTooSkewed</Code></Error>";
const LONG_AGO: &str = "Date: Tue, 15 Nov 2005 08:12:31 GMT\r\n";

fn got(bucket: &dyn Bucket) -> Result<(), BucketError> {
    bucket.get("a/b", 100).map(drop)
}

fn put(bucket: &dyn Bucket) -> Result<(), BucketError> {
    bucket.put("a/b", b"some bytes")
}

fn listed(bucket: &dyn Bucket) -> Result<(), BucketError> {
    bucket.list("a/", None).map(drop)
}

fn removed(bucket: &dyn Bucket) -> Result<(), BucketError> {
    bucket.remove("a/b")
}

type Ask = fn(&dyn Bucket) -> Result<(), BucketError>;

const ASKED: [Ask; 4] = [got, put, listed, removed];

/// What comes of each kind of question that is answered so; each is asked once.
fn each(script: impl Fn() -> Do) -> [Result<(), BucketError>; 4] {
    ASKED.map(|ask| {
        let server = Scripted::start(vec![script()]);
        let answer = ask(&*s3(&server.address, "practice", SECRET));
        assert_eq!(server.asked(), 1, "asked once");
        answer
    })
}

#[test]
fn what_a_store_answers() {
    for (status, more, body, expected) in [
        (400, "", "", BucketError::Refused(400)),
        (401, "", "", BucketError::Refused(401)),
        (403, "", "", BucketError::Refused(403)),
        (404, "", NO_BUCKET, BucketError::NoBucket),
        (403, "", QUOTA, BucketError::Full),
        (400, "", OTHER_QUOTA, BucketError::Full),
        (507, "", "", BucketError::Full),
        (408, "", "", BucketError::Busy(408)),
        (429, "Retry-After: 5\r\n", "", BucketError::Busy(429)),
        (500, "", "", BucketError::Busy(500)),
        (502, "", "", BucketError::Busy(502)),
        (503, "", "Could not reach quorum of 2", BucketError::Busy(503)),
        (501, "", "", BucketError::Refused(501)),
        (403, "", SKEWED, BucketError::Clock),
        (400, LONG_AGO, "", BucketError::Clock),
        (403, LONG_AGO, "", BucketError::Clock),
        (503, LONG_AGO, "", BucketError::Busy(503)),
        (301, "Location: http://127.0.0.1:9/elsewhere\r\n", "", BucketError::Refused(301)),
        (307, "Location: http://127.0.0.1:9/elsewhere\r\n", "", BucketError::Refused(307)),
        (301, "", "", BucketError::Refused(301)),
        (409, "", "", BucketError::Refused(409)),
        (412, "", "", BucketError::Refused(412)),
    ] {
        for came in each(|| Do::Say(answer(status, more, body))) {
            // An upload that meets another is tried again above.
            assert_eq!(came, Err(expected.clone()), "{status} {more}{body}");
        }
    }
}

#[test]
fn nothing_there_is_told_from_no_bucket() {
    let [got, put, listed, removed] = each(|| Do::Say(answer(404, "", NO_KEY)));
    assert_eq!((got, put), (Err(BucketError::Absent), Err(BucketError::NoBucket)));
    assert_eq!((listed, removed), (Err(BucketError::NoBucket), Ok(())));
}

#[test]
fn a_date_of_today_is_no_difference_of_clocks() {
    let now = chrono::DateTime::<chrono::Utc>::from(SystemTime::now()).to_rfc2822();
    for came in each(|| Do::Say(answer(403, &format!("Date: {now}\r\n"), ""))) {
        assert_eq!(came, Err(BucketError::Refused(403)));
    }
}

#[test]
fn what_is_no_answer_at_all() {
    let head = "HTTP/1.1 200 OK\r\nETag: \"x\"\r\nLast-Modified: Tue, 15 Nov 2005 08:12:31 GMT\r\n";
    let get = |bytes: &str| {
        let server = Scripted::start(vec![Do::Cut(bytes.as_bytes().to_vec()), Do::Cut(bytes.as_bytes().to_vec())]);
        s3(&server.address, "practice", SECRET).get("a", 100)
    };
    assert_eq!(get(&format!("{head}Content-Length: 3\r\n\r\nabc")), Ok(b"abc".to_vec()));
    assert_eq!(get(&format!("{head}Transfer-Encoding: chunked\r\n\r\n3\r\nabc\r\n0\r\n\r\n")), Ok(b"abc".to_vec()), "in pieces");
    assert_eq!(get(&format!("{head}Content-Length: 9\r\n\r\nabc")), Err(BucketError::Slow), "it breaks off");
    assert_eq!(get(""), Err(BucketError::Slow), "it hangs up");
    assert!(matches!(get("SSH-2.0-OpenSSH_9.2\r\n\r\n"), Err(BucketError::Broken(_))));
    let large = format!("{head}Content-Length: 999999999999\r\n\r\n");
    assert_eq!(get(&format!("{large}abc")), Err(BucketError::TooLarge), "told by its length");
    assert_eq!(get(&format!("{head}\r\n{}", "abc".repeat(100))), Err(BucketError::TooLarge), "told by what comes");
    for ask in [put, listed] {
        let page = page("<html>Sign in here</html>");
        assert!(matches!(ask(&*s3(&page.address, "practice", SECRET)), Err(BucketError::Broken(_))));
    }
    let page = page("<html>Sign in here</html>");
    assert!(matches!(listed(&*webdav(&format!("{}/dav", page.address))), Err(BucketError::Broken(_))));
}

fn page(body: &str) -> Scripted {
    Scripted::start(vec![Do::Say(answer(200, "Content-Type: text/html\r\n", body))])
}

#[test]
fn a_listing_that_never_ends_is_no_listing() {
    let body = "<ListBucketResult><NextContinuationToken>x</NextContinuationToken></ListBucketResult>";
    let server = Scripted::start((0..9).map(|_| Do::Say(answer(200, "", body))).collect());
    assert!(matches!(listed(&*s3(&server.address, "practice", SECRET)), Err(BucketError::Broken(_))));
    assert_eq!(server.asked(), 2);
}

#[test]
fn names_that_are_none_of_ours_are_not_listed() {
    let one = |key: &str| {
        format!("<Contents><Key>{key}</Key><Size>3</Size><LastModified>2026-01-01T00:00:00Z</LastModified></Contents>")
    };
    let all = ["a/c", "a/.hidden", "a/b", "a/b c", "elsewhere/b", "a/1#1"].map(one).concat();
    let server = Scripted::start(vec![Do::Say(answer(200, "", &format!("<ListBucketResult>{all}</ListBucketResult>")))]);
    let listed = s3(&server.address, "practice", SECRET).list("a/", None).unwrap();
    assert_eq!(listed.iter().map(|one| one.name.as_str()).collect::<Vec<_>>(), ["a/b", "a/c"]);
}

#[test]
fn a_connection_that_was_closed_meanwhile_is_made_again() {
    let ok = || answer(200, "ETag: \"x\"\r\n", "");
    let server = Scripted::start(vec![Do::Cut(ok()), Do::Say(ok()), Do::Cut(vec![]), Do::Say(ok())]);
    let bucket = s3(&server.address, "practice", SECRET);
    for _ in 0..3 {
        assert_eq!(put(&*bucket), Ok(()));
    }
    assert!(server.asked() >= 4, "{}", server.asked());
}

#[test]
fn eight_are_fetched_at_a_time_and_handed_over_in_order() {
    let all: Vec<String> = (0..20).map(|k| format!("a/{k:02}")).collect();
    let script = (0..20).map(|k| Do::Await(if k < 8 { 8 } else { 0 }, answer(200, "ETag: \"x\"\r\n", "x")));
    let server = Scripted::start(script.collect());
    let mut came = Vec::new();
    s3(&server.address, "practice", SECRET).get_each(&all, 9, &mut |k, answer| {
        if k == 0 {
            assert_eq!(server.asked(), 8, "and no more than eight");
        }
        came.push((k, answer));
        true
    });
    assert_eq!(came, (0..20).map(|k| (k, Ok(b"x".to_vec()))).collect::<Vec<_>>());
}

#[test]
fn only_a_trial_asks_that_nothing_be_there_and_no_secret_is_sent() {
    let ok = || Do::Say(answer(200, "ETag: \"x\"\r\n", ""));
    let server = Scripted::start(vec![ok(), ok(), Do::Say(answer(412, "", "")), ok()]);
    let bucket = s3(&server.address, "practice", SECRET);
    put(&*bucket).unwrap();
    assert_eq!(bucket.put_new("a/b", b"some bytes"), Ok(true));
    assert_eq!(bucket.put_new("a/b", b"some bytes"), Ok(false));
    bucket.remove("a/b").unwrap();
    let heads: Vec<_> = (0..4).map(|k| server.head(k).to_lowercase()).collect();
    assert!(heads[0].starts_with("put /practice/a/b http/1.1\r\n"), "{}", heads[0]);
    assert!(!heads[0].contains("if-none-match") && heads[1].contains("if-none-match: *"));
    assert!(heads[3].starts_with("delete /practice/a/b http/1.1\r\n"), "{}", heads[3]);
    // SHA-256 of "some bytes".
    let sum = "x-amz-content-sha256: 0d22cdcc10e6d049dbe1af5123d50873fdfc1a4f58306e58cb6241be9472014d";
    for head in &heads {
        assert!(head.contains("authorization: aws4-hmac-sha256 credential=a-key/") && !head.contains(SECRET), "{head}");
    }
    assert!(heads[0].contains(sum), "what is sent is signed with it: {}", heads[0]);
}

#[test]
fn nobody_there() {
    let port = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port();
    for address in [format!("http://127.0.0.1:{port}"), "https://store.invalid".to_owned()] {
        let started = Instant::now();
        for ask in ASKED {
            assert_eq!(ask(&*s3(&address, "practice", SECRET)), Err(BucketError::NoConnection), "{address}");
        }
        assert!(started.elapsed() < Duration::from_secs(40));
    }
}

#[test]
fn somebody_else_there() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name).into_os_string().into_string().unwrap();
    let (key, certificate) = (at("key"), at("certificate"));
    let made = Command::new("openssl")
        .args(["req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-nodes", "-days", "2"])
        .args(["-subj", "/CN=localhost", "-addext", "subjectAltName=DNS:localhost"])
        .args(["-keyout", &key, "-out", &certificate])
        .output()
        .unwrap();
    assert!(made.status.success(), "{}", String::from_utf8_lossy(&made.stderr));
    let port = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port();
    let mut server = Command::new("openssl")
        .args(["s_server", "-quiet", "-www", "-accept", &port.to_string(), "-key", &key, "-cert", &certificate])
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    while std::net::TcpStream::connect(("127.0.0.1", port)).is_err() {
        std::thread::sleep(Duration::from_millis(20));
    }
    let address = format!("https://localhost:{port}");
    let came = ASKED.map(|ask| ask(&*s3(&address, "practice", SECRET)));
    server.kill().unwrap();
    server.wait().unwrap();
    assert_eq!(came, [(); 4].map(|()| Err(BucketError::NotTrusted)));
    let plain = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = format!("https://{}", plain.local_addr().unwrap());
    std::thread::spawn(move || {
        for stream in plain.incoming() {
            let mut stream = stream.unwrap();
            let _ = stream.read(&mut [0; 4096]);
            let _ = stream.write_all(&answer(400, "", "no TLS here"));
        }
    });
    assert_eq!(got(&*s3(&address, "practice", SECRET)), Err(BucketError::NotTrusted));
}

#[test]
fn webdav_in_the_same_words() {
    for (status, expected) in [
        (401, BucketError::Refused(401)),
        (403, BucketError::Refused(403)),
        (507, BucketError::Full),
        (503, BucketError::Busy(503)),
        (302, BucketError::Refused(302)),
    ] {
        for ask in ASKED {
            let server = Scripted::start(vec![Do::Say(answer(status, "Location: /login\r\n", ""))]);
            assert_eq!(ask(&*webdav(&format!("{}/dav", server.address))), Err(expected.clone()), "{status}");
            assert_eq!(server.asked(), 1);
            assert!(server.head(0).to_lowercase().contains("authorization: basic ys1rzxk6"), "{}", server.head(0));
        }
    }
}
