#pragma once
#include "converter_input.h"
#include "options.h"
#include <fstream>

// The wipers of a stick at the controller's analog inputs: a stick that goes round in a circle, or the digital-to-analog
// converter in the place of the wiper of x. The truth has a line for every conversion.
class WiperModel {
public:
    // `converter` is null unless the wiper is the converter.
    WiperModel(Machine &machine, const WiperOptions &options, const ConverterInput *converter);
    void print_summary() const;

private:
    static void on_conversion(avr_irq_t *irq, std::uint32_t mux, void *model);
    void convert(unsigned channel);
    double millivolts(bool is_x) const;

    Machine &machine_;
    WiperOptions options_;
    const ConverterInput *converter_;
    std::ofstream truth_;
    std::uint64_t conversions_ = 0;
};
