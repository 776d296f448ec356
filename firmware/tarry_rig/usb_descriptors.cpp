#include "usb_descriptors.h"

namespace {

// 1209:0001 is the number that its keepers give out for tests on one's own bench; a product needs one of its own.
const uint8_t device[] = {
    18, 1, 0x00, 0x02,        // USB 2.00
    0, 0, 0,                  // class by interface
    control_packet_size,
    0x09, 0x12, 0x01, 0x00,   // vendor, product
    0x00, 0x01,               // release 1.00
    1, 2, 0,                  // maker, product, no serial number
    1,                        // one configuration
};

const uint8_t report[] = {
    0x05, 0x01,   // usage page: generic desktop
    0x09, 0x05,   // usage: gamepad
    0xa1, 0x01,   // collection: application
    0x05, 0x09,   //   usage page: buttons
    0x19, 0x01,   //   from button 1
    0x29, 0x08,   //   to button 8
    0x15, 0x00,   //   0..1
    0x25, 0x01,
    0x75, 0x01,   //   1 bit each
    0x95, 0x08,   //   8 of them
    0x81, 0x02,   //   input: data, variable, absolute
    0x05, 0x01,   //   usage page: generic desktop
    0x09, 0x30,   //   X
    0x09, 0x31,   //   Y
    0x15, 0x81,   //   -127..127
    0x25, 0x7f,
    0x75, 0x08,   //   8 bits each
    0x95, 0x02,   //   2 of them
    0x81, 0x02,   //   input: data, variable, absolute
    0xc0,
};

constexpr uint8_t hid_at = 18;
const uint8_t configuration[] = {
    9, 2, 34, 0, 1, 1, 0, 0x80, 50,                         // one interface, bus-powered, 100 mA
    9, 4, 0, 0, 1, 3, 0, 0, 0,                              // HID without a boot protocol, one endpoint
    9, 0x21, 0x11, 0x01, 0, 1, 0x22, sizeof report, 0,      // HID 1.11, one report descriptor
    7, 5, 0x80 | report_endpoint, 3, report_packet_size, 0, 1,   // interrupt in, every frame of 1 ms
};
static_assert(sizeof configuration == 34, "the total length that the configuration states");

const uint8_t languages[] = {4, 3, 0x09, 0x04};
const uint8_t maker[] = {12, 3, 'T', 0, 'a', 0, 'r', 0, 'r', 0, 'y', 0};
const uint8_t product[] = {36, 3, 'R', 0, 'e', 0, 'f', 0, 'e', 0, 'r', 0, 'e', 0, 'n', 0, 'c', 0, 'e', 0,
                           ' ', 0, 'g', 0, 'a', 0, 'm', 0, 'e', 0, 'p', 0, 'a', 0, 'd', 0};
static_assert(sizeof product == 36 && sizeof maker == 12, "the lengths that the strings state");

// An answer is one short packet, so none needs a second or an empty one after it.
static_assert(sizeof report < control_packet_size && sizeof configuration < control_packet_size
                  && sizeof product < control_packet_size, "descriptors of one packet");

}

Bytes usb_descriptor(Descriptor type, uint8_t index) {
    switch (type) {
    case Descriptor::device: return {device, sizeof device};
    case Descriptor::configuration: return index == 0 ? Bytes{configuration, sizeof configuration} : Bytes{nullptr, 0};
    case Descriptor::hid: return {configuration + hid_at, 9};
    case Descriptor::report: return {report, sizeof report};
    case Descriptor::string:
        switch (index) {
        case 0: return {languages, sizeof languages};
        case 1: return {maker, sizeof maker};
        case 2: return {product, sizeof product};
        }
        break;
    }
    return {nullptr, 0};
}
