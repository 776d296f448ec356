#include "converter_input.h"
#include <cstdio>

namespace {

constexpr unsigned word_bits = 16;
constexpr unsigned control = 0x3;   // channel A, gain 1, output on

}

ConverterInput::ConverterInput(Machine &machine, unsigned threshold, std::function<void(bool)> on_crossing)
    : machine_(machine), threshold_(threshold), on_crossing_(std::move(on_crossing)) {
    watch(machine.board().converter_select_bit, on_select);
    watch(machine.board().converter_clock_bit, on_clock);
    watch(machine.board().converter_data_bit, on_data);
}

void ConverterInput::watch(int bit, avr_irq_notify_t notify) {
    avr_irq_register_notify(
        avr_io_getirq(machine_.avr(), AVR_IOCTL_IOPORT_GETIRQ(machine_.board().converter_port), bit), notify, this);
}

void ConverterInput::on_select(avr_irq_t *, std::uint32_t value, void *input) {
    auto *self = static_cast<ConverterInput *>(input);
    const bool selected = !(value & 1);
    if (selected == self->selected_)
        return;
    self->selected_ = selected;
    if (!selected && self->bits_ != 0)
        self->take_word();
    self->word_ = self->bits_ = 0;
}

// Mode 0: data is taken as the clock rises.
void ConverterInput::on_clock(avr_irq_t *, std::uint32_t value, void *input) {
    auto *self = static_cast<ConverterInput *>(input);
    const bool high = value & 1;
    if (high && !self->clock_ && self->selected_) {
        self->word_ = self->word_ << 1 | self->data_;
        self->bits_++;
    }
    self->clock_ = high;
}

void ConverterInput::on_data(avr_irq_t *, std::uint32_t value, void *input) {
    static_cast<ConverterInput *>(input)->data_ = value & 1;
}

void ConverterInput::take_word() {
    words_++;
    if (bits_ != word_bits || word_ >> 12 != control) {
        bad_words_++;
        return;
    }
    level_ = (word_ & 0xfff) * 16;
    const bool above = level_ >= threshold_;
    if (above == above_)
        return;
    above_ = above;
    on_crossing_(above);
}

void ConverterInput::print_summary() const {
    std::fprintf(stderr, "converter words: %llu, bad %llu\n", static_cast<unsigned long long>(words_),
                 static_cast<unsigned long long>(bad_words_));
}
