#include "usb_requests.h"

namespace {

// USB 2.0 table 9-4, HID 1.11 section 7.2.
enum Request : uint8_t {
    get_status = 0,
    clear_feature = 1,
    set_feature = 3,
    set_address = 5,
    get_descriptor = 6,
    get_configuration = 8,
    set_configuration = 9,
    get_interface = 10,
    set_interface = 11,
    get_report = 1,
};

// Direction, type and recipient of bmRequestType.
constexpr uint8_t to_device = 0x00;
constexpr uint8_t to_interface = 0x01;
constexpr uint8_t to_endpoint = 0x02;
constexpr uint8_t from_device = 0x80;
constexpr uint8_t from_interface = 0x81;
constexpr uint8_t from_endpoint = 0x82;
constexpr uint8_t class_from_interface = 0xa1;

constexpr uint8_t report_endpoint_address = 0x80 | report_endpoint;
constexpr uint8_t input_report = 1;

UsbAnswer plain(UsbAnswer::Kind kind, uint8_t number = 0) { return {kind, {nullptr, 0}, number}; }
UsbAnswer stall() { return plain(UsbAnswer::Kind::stall); }

// The bytes must outlive the answer.
UsbAnswer data(const SetupPacket &setup, const Bytes &bytes) {
    if (bytes.length == 0)
        return stall();
    const uint8_t length = setup.length < bytes.length ? static_cast<uint8_t>(setup.length) : bytes.length;
    return {UsbAnswer::Kind::data, {bytes.data, length}, 0};
}

UsbAnswer byte_pair(const SetupPacket &setup, uint8_t first, uint8_t count) {
    static uint8_t sent[2];
    sent[0] = first;
    sent[1] = 0;
    return data(setup, {sent, count});
}

bool names_report_endpoint(const SetupPacket &setup) { return (setup.index & 0xff) == report_endpoint_address; }

UsbAnswer feature(const SetupPacket &setup, uint8_t halted) {
    return setup.value == 0 && names_report_endpoint(setup) ? plain(UsbAnswer::Kind::halt, halted) : stall();
}

UsbAnswer standard_in(const SetupPacket &setup, const UsbState &state) {
    switch (setup.request) {
    case get_status: return byte_pair(setup, 0, 2);
    case get_descriptor:
        return data(setup, usb_descriptor(static_cast<Descriptor>(setup.value >> 8), static_cast<uint8_t>(setup.value)));
    case get_configuration: return byte_pair(setup, state.configuration, 1);
    }
    return stall();
}

UsbAnswer standard_out(const SetupPacket &setup) {
    switch (setup.request) {
    case set_address: return plain(UsbAnswer::Kind::address, static_cast<uint8_t>(setup.value & 0x7f));
    case set_configuration:
        return setup.value <= 1 ? plain(UsbAnswer::Kind::configuration, static_cast<uint8_t>(setup.value)) : stall();
    }
    return stall();
}

UsbAnswer of_interface(const SetupPacket &setup) {
    if (setup.index != 0)
        return stall();
    switch (setup.request) {
    case get_status: return byte_pair(setup, 0, 2);
    case get_descriptor: return data(setup, usb_descriptor(static_cast<Descriptor>(setup.value >> 8), 0));
    case get_interface: return byte_pair(setup, 0, 1);
    }
    return stall();
}

}

UsbAnswer usb_answer(const SetupPacket &setup, const UsbState &state) {
    switch (setup.request_type) {
    case from_device: return standard_in(setup, state);
    case to_device: return standard_out(setup);
    case from_interface: return of_interface(setup);
    case to_interface:
        return setup.request == set_interface && setup.value == 0 && setup.index == 0 ? plain(UsbAnswer::Kind::done) : stall();
    case from_endpoint:
        return setup.request == get_status ? byte_pair(setup, names_report_endpoint(setup) && state.halted, 2) : stall();
    case to_endpoint:
        if (setup.request == clear_feature || setup.request == set_feature)
            return feature(setup, setup.request == set_feature);
        return stall();
    case class_from_interface:
        if (setup.request == get_report && setup.value >> 8 == input_report)
            return data(setup, {reinterpret_cast<const uint8_t *>(&state.report), sizeof state.report});
        return stall();
    }
    return stall();
}
