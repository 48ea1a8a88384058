//! Memory that is given back is wiped first, so that a locked practice leaves no name in the pages of the program.
//!
//! Names and notes pass through many short-lived texts (requests, entries, views, JSON); wiping each by hand would miss
//! one. So the allocator of every program that has this crate in it wipes a block as it is freed.

#![allow(unsafe_code, reason = "an allocator is unsafe to write; this one only passes on to the system's")]

use std::alloc::{GlobalAlloc, Layout, System};
use std::hint::black_box;

#[global_allocator]
static WIPING: Wiping = Wiping;

struct Wiping;

// `realloc` is the trait's own: a new block, a copy, and the old block freed, which wipes it.
unsafe impl GlobalAlloc for Wiping {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        // SAFETY: the caller keeps to the contract, which is the same.
        unsafe { System.alloc(layout) }
    }

    unsafe fn alloc_zeroed(&self, layout: Layout) -> *mut u8 {
        // SAFETY: as above.
        unsafe { System.alloc_zeroed(layout) }
    }

    unsafe fn dealloc(&self, block: *mut u8, layout: Layout) {
        // SAFETY: the block is the caller's, of this size, and not used after this.
        unsafe {
            block.write_bytes(0, layout.size());
            // Seen by something that the compiler does not know, so that the wiping is not left out.
            black_box(block);
            System.dealloc(block, layout);
        }
    }
}
