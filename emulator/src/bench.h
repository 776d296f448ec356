#pragma once
#include "converter_input.h"
#include "device_model.h"
#include "pacing.h"
#include "response_line.h"
#include "serial_bridge.h"
#include "truth_log.h"
#include "usb_host.h"
#include "wiper_model.h"
#include <memory>

// The rig, the device wired to it, the cable, and what goes wrong with them.
class Bench {
public:
    Bench(const Options &options, const Board &board, const volatile sig_atomic_t &stop);
    void run();
    void print_summary() const;

private:
    static void on_press_pin(avr_irq_t *irq, std::uint32_t value, void *bench);
    void pin_changed(bool high);
    void input_changed(bool down);
    void pressed();
    void released();
    void tick();
    void pace();
    void wait_for_echo();
    void host_came_or_went(bool present);
    void apply_faults();
    void unplug();
    void stay_unplugged();

    Options options_;
    const volatile sig_atomic_t &stop_;
    Machine machine_;
    PseudoTerminal port_;
    SerialBridge bridge_;
    DeviceModel device_;
    ResponseLine line_;
    TruthLog truth_;
    Pacing pacing_;

    std::unique_ptr<ConverterInput> converter_;
    std::unique_ptr<UsbHost> usb_;
    std::unique_ptr<WiperModel> wiper_;
    bool pin_high_ = false;
    std::uint64_t pin_rose_at_ = 0;
    std::uint64_t longest_to_input_ = 0;
    bool input_down_ = false;
    bool host_present_ = false;
    bool finished_ = false;
    std::uint64_t answered_until_ = 0;
    std::uint64_t presses_ = 0;
    std::uint64_t responses_ = 0;
    std::uint64_t late_ = 0;
    std::uint64_t missed_ = 0;

    enum class Pending { none, reset, reboot, unplug } pending_ = Pending::none;
    std::uint64_t pending_at_ = 0;
    bool unplugged_ = false;
    std::chrono::steady_clock::time_point plug_in_at_;
    std::chrono::steady_clock::time_point began_;
};
