#include "wiper_model.h"
#include <cmath>
#include <cstdio>
#include <iomanip>
#include <stdexcept>

namespace {

constexpr unsigned supply_mv = 5000;
// How far the circle reaches to either side of the middle, as a share of the reference.
constexpr double reach = 0.45;
// The place of `src` in avr_adc_mux_t.
constexpr unsigned source_shift = 19;

}

WiperModel::WiperModel(Machine &machine, const WiperOptions &options, const ConverterInput *converter)
    : machine_(machine), options_(options), converter_(converter) {
    machine_.avr()->vcc = machine_.avr()->avcc = supply_mv;
    machine_.avr()->aref = options.aref_mv;
    avr_irq_register_notify(avr_io_getirq(machine_.avr(), AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_OUT_TRIGGER), on_conversion, this);
    if (options.truth.empty())
        return;
    truth_.open(options.truth);
    if (!truth_)
        throw std::runtime_error(options.truth + " cannot be written");
    truth_ << "tick,axis,millivolts\n" << std::fixed << std::setprecision(3);
}

void WiperModel::print_summary() const {
    std::fprintf(stderr, "conversions: %llu\n", static_cast<unsigned long long>(conversions_));
}

void WiperModel::on_conversion(avr_irq_t *, std::uint32_t mux, void *model) {
    static_cast<WiperModel *>(model)->convert(mux >> source_shift);
}

void WiperModel::convert(unsigned channel) {
    const Board &board = machine_.board();
    if (channel != board.wiper_x_channel && channel != board.wiper_y_channel)
        return;
    const bool is_x = channel == board.wiper_x_channel;
    const double value = millivolts(is_x);
    conversions_++;
    avr_raise_irq(avr_io_getirq(machine_.avr(), AVR_IOCTL_ADC_GETIRQ, static_cast<int>(ADC_IRQ_ADC0 + channel)),
                  static_cast<std::uint32_t>(std::lround(value)));
    if (truth_.is_open())
        truth_ << machine_.tick_at(machine_.now()) << ',' << (is_x ? 'x' : 'y') << ',' << value << '\n';
}

double WiperModel::millivolts(bool is_x) const {
    if (converter_)
        return is_x ? converter_->level() * options_.aref_mv / 65536.0 : options_.aref_mv / 2.0;
    const double angle = 2 * M_PI * machine_.microseconds(machine_.now()) / (options_.turn_ms * 1000);
    return options_.aref_mv * (0.5 + reach * (is_x ? std::cos(angle) : std::sin(angle)));
}
