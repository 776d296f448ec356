#include "usb_host.h"
#include <cstdio>

namespace {

constexpr int udcon = 0xe0;   // data address, register summary of the ATmega32U4; bit 0 is DETACH
constexpr unsigned quarters_of_a_frame = 4;

struct Request {
    const char *name;
    std::array<std::uint8_t, 8> setup;
};

// As computers do it (USB 2.0 section 9.1.2): device, address, device, configuration, set configuration, HID report.
const Request requests[] = {
    {"device (first bytes)", {0x80, 6, 0, 1, 0, 0, 8, 0}},
    {"address", {0x00, 5, 23, 0, 0, 0, 0, 0}},
    {"device", {0x80, 6, 0, 1, 0, 0, 18, 0}},
    {"configuration", {0x80, 6, 0, 2, 0, 0, 255, 0}},
    {"product", {0x80, 6, 2, 3, 0x09, 0x04, 255, 0}},
    {"set configuration", {0x00, 9, 1, 0, 0, 0, 0, 0}},
    {"configuration chosen", {0x80, 8, 0, 0, 0, 0, 1, 0}},
    {"report descriptor", {0x81, 6, 0, 0x22, 0, 0, 255, 0}},
};
constexpr std::size_t request_count = sizeof requests / sizeof requests[0];

bool answers_with_data(std::size_t request) { return requests[request].setup[0] & 0x80; }

}

UsbHost::UsbHost(Machine &machine, std::function<void(bool)> on_button)
    : machine_(machine), on_button_(std::move(on_button)), answers_(request_count) {}

void UsbHost::reset() {
    stage_ = Stage::detached;
    button_ = false;
}

bool UsbHost::attached() const { return !(machine_.avr()->data[udcon] & 1); }

void UsbHost::tick() {
    if (!attached()) {
        stage_ = Stage::detached;
        return;
    }
    if (++quarters_ % quarters_of_a_frame == 0)
        proceed();
}

// One packet or two a frame.
void UsbHost::proceed() {
    switch (stage_) {
    case Stage::detached: {
        Bytes none;
        transfer(AVR_IOCTL_USB_RESET, 0, none);
        stage_ = Stage::bus_reset;
        break;
    }
    case Stage::bus_reset:
        request_ = 0;
        stage_ = Stage::setup;
        break;
    case Stage::setup: send_setup(); break;
    case Stage::data_or_status: take_answer(); break;
    case Stage::configured: fetch_report(); break;
    case Stage::failed: break;
    }
}

void UsbHost::send_setup() {
    Bytes setup(requests[request_].setup.begin(), requests[request_].setup.end());
    if (transfer(AVR_IOCTL_USB_SETUP, 0, setup) == AVR_IOCTL_USB_OK)
        stage_ = Stage::data_or_status;
}

void UsbHost::take_answer() {
    Bytes answer;
    const int result = transfer(AVR_IOCTL_USB_READ, 0, answer);
    if (result == AVR_IOCTL_USB_NAK)
        return;
    if (result != AVR_IOCTL_USB_OK) {
        stage_ = Stage::failed;
        return;
    }
    answers_[request_] = answer;
    if (answers_with_data(request_)) {
        Bytes status;
        transfer(AVR_IOCTL_USB_WRITE, 0, status);
    }
    stage_ = ++request_ == request_count ? Stage::configured : Stage::setup;
}

void UsbHost::fetch_report() {
    Bytes report;
    if (transfer(AVR_IOCTL_USB_READ, 0x81, report) != AVR_IOCTL_USB_OK || report.empty())
        return;
    reports_++;
    const bool down = report[0] & 1;
    if (down == button_)
        return;
    button_ = down;
    on_button_(down);
}

int UsbHost::transfer(std::uint32_t control, std::uint8_t pipe, Bytes &bytes) {
    std::uint8_t buffer[64];
    std::copy(bytes.begin(), bytes.end(), buffer);
    avr_io_usb packet = {pipe, static_cast<std::uint32_t>(bytes.size()), buffer};
    const int result = avr_ioctl(machine_.avr(), control, &packet);
    if (control == AVR_IOCTL_USB_READ && result == AVR_IOCTL_USB_OK)
        bytes.assign(buffer, buffer + packet.sz);
    return result;
}

void UsbHost::print_summary() const {
    if (request_ == 0)
        return;
    for (std::size_t i = 0; i < request_count && i < request_; i++) {
        std::fprintf(stderr, "usb %s:", requests[i].name);
        for (const std::uint8_t byte : answers_[i])
            std::fprintf(stderr, " %02x", byte);
        std::fprintf(stderr, "\n");
    }
    if (stage_ == Stage::failed)
        std::fprintf(stderr, "usb %s: stalled\n", requests[request_].name);
    std::fprintf(stderr, "usb reports: %llu\n", static_cast<unsigned long long>(reports_));
}
