#pragma once
#include "machine.h"

// The axis line of a device behind the digital-to-analog converter that the rig writes to over three wires.
class ConverterInput {
public:
    // Told whether the axis is at or above the threshold (0..65535), whenever that has changed.
    ConverterInput(Machine &machine, unsigned threshold, std::function<void(bool)> on_crossing);
    // The level that the converter stands at, 0..65535 in steps of 16.
    unsigned level() const { return level_; }
    void print_summary() const;

private:
    static void on_select(avr_irq_t *irq, std::uint32_t value, void *input);
    static void on_clock(avr_irq_t *irq, std::uint32_t value, void *input);
    static void on_data(avr_irq_t *irq, std::uint32_t value, void *input);
    void watch(int bit, avr_irq_notify_t notify);
    void take_word();

    Machine &machine_;
    unsigned threshold_;
    std::function<void(bool)> on_crossing_;
    bool selected_ = false;
    bool clock_ = false;
    bool data_ = false;
    unsigned word_ = 0;
    unsigned bits_ = 0;
    unsigned level_ = 0;
    bool above_ = false;
    std::uint64_t words_ = 0;
    std::uint64_t bad_words_ = 0;
};
