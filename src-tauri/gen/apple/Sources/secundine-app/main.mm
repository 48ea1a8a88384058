#include "bindings/bindings.h"

// In BeforePage.swift.
extern "C" void secundine_before_page(void);

int main(int argc, char * argv[]) {
	secundine_before_page();
	ffi::start_app();
	return 0;
}
