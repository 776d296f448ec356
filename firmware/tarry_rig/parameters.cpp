#include "parameters.h"
#include "flash.h"
#include <string.h>

namespace {

struct Definition {
    char key[5];
    uint32_t initial;
    uint32_t lowest;
    uint32_t highest;
};

// In the order of the enumeration.
const Definition definitions[] PROGMEM = {
    {"imin", 70000, 2000, 60000000},
    {"imax", 120000, 2000, 60000000},
    {"hold", 20000, 100, 30000000},
    {"tout", 60000, 100, 30000000},
    {"rear", 10000, 0, 30000000},
    {"emin", 20, 0, 1000000},
    {"resp", 0, 0, 2},
    {"pola", 0, 0, 1},
    {"thre", 128, 1, 254},
    {"seed", 1, 1, 0xffffffff},
    {"firs", 1, 1, 0xfffffffe},
    {"coun", 0, 0, 0xfffffffe},
    {"acti", 0, 0, 2},
    {"alow", 0, 0, 65535},
    {"ahig", 65535, 0, 65535},
    {"ramp", 0, 0, 1000000},
    {"refm", 0, 0, 1},
    {"sint", 1000, 625, 1000000},
    {"sref", 0, 0, 1},
};
constexpr uint8_t definition_count = sizeof definitions / sizeof definitions[0];

Definition definition_of(uint8_t index) {
    Definition definition;
    memcpy_P(&definition, &definitions[index], sizeof definition);
    return definition;
}

}

Parameters::Parameters() {
    for (uint8_t i = 0; i < definition_count; i++)
        values_[i] = definition_of(i).initial;
}

Setting Parameters::set(const char *key, uint32_t value) {
    for (uint8_t i = 0; i < definition_count; i++) {
        const Definition definition = definition_of(i);
        if (memcmp(key, definition.key, 4) != 0)
            continue;
        const bool below_imin = static_cast<Parameter>(i) == Parameter::imax && value < (*this)[Parameter::imin];
        if (value < definition.lowest || value > definition.highest || below_imin)
            return Setting::out_of_range;
        values_[i] = value;
        return Setting::done;
    }
    return Setting::unknown_key;
}

bool Parameters::consistent() const {
    return (*this)[Parameter::imin] <= (*this)[Parameter::imax]
        && (*this)[Parameter::coun] <= 0xffffffff - (*this)[Parameter::firs] + 1
        && ((*this)[Parameter::acti] != 2 || (*this)[Parameter::ramp] < (*this)[Parameter::hold]);
}
