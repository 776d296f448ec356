#pragma once
#include <cstdint>
#include <vector>

// A reader of HID report descriptors (HID 1.11 section 6.2.2, short items), only for these tests.

struct InputField {
    uint32_t application;   // usage of the collection around it, page in the upper half
    uint32_t usage;         // 0 for a constant
    unsigned bit;           // from the report's first bit
    unsigned size;
    int32_t lowest;
    int32_t highest;
    bool constant;
    bool variable;
    bool relative;
};

struct ReportLayout {
    bool sound = true;   // items whole, collections closed
    std::vector<InputField> fields;
    unsigned input_bits = 0;
};

ReportLayout read_report_descriptor(const std::vector<uint8_t> &bytes);
