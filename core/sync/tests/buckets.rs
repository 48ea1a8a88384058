#[test] fn x() {}
