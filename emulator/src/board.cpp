#include "board.h"
#include "simavr_headers.h"

namespace {

// Data addresses of OCR2B (ATmega328P) and OCR3AL (ATmega32U4), from their register summaries.
constexpr std::uint16_t ocr2b = 0xb4;
constexpr std::uint16_t ocr3al = 0x98;

const Board boards[] = {
    {"328p-16", "atmega328p", 16000000, '0', 'D', 2, 'B', 0, ocr2b, ACOMP_IRQ_AIN1, 'C', 0, 1, 2, 3, 4},
    {"328p-8", "atmega328p", 8000000, '0', 'D', 2, 'B', 0, ocr2b, ACOMP_IRQ_AIN1, 'C', 0, 1, 2, 3, 4},
    {"32u4-16", "atmega32u4", 16000000, '1', 'B', 5, 'D', 4, ocr3al, ACOMP_IRQ_ADC7, 'B', 6, 1, 2, 6, 5},
    {"32u4-8", "atmega32u4", 8000000, '1', 'B', 5, 'D', 4, ocr3al, ACOMP_IRQ_ADC7, 'B', 6, 1, 2, 6, 5},
};

}

const Board *find_board(const std::string &name) {
    for (const Board &board : boards)
        if (name == board.name)
            return &board;
    return nullptr;
}
