#pragma once

// The reference gamepad's descriptors and answers against the tables of USB 2.0 chapter 9 and HID 1.11.
void test_usb();
