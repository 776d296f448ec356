#pragma once

// A board with USB of its own shows the tester that port in the board IDE; the bare build has no USB stack.
#if defined(ARDUINO) && defined(USBCON)
#define SERIAL_IS_USB 1
#else
#define SERIAL_IS_USB 0
#endif
