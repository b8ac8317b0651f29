// How values of a descriptor are compared.
#include "core/descriptors/stages.hpp"
#include "core/journal/json_value.hpp"
#include "core/vineyard/catalogue.hpp"

namespace bullace::vineyard {

std::optional<double> comparableNumber(const Asked& asked, BytesView value) {
    using descriptors::DescriptorKind;
    switch (asked.known.kind) {
    case DescriptorKind::Stage:
    case DescriptorKind::Code:
    case DescriptorKind::Percent:
    case DescriptorKind::Count:
    case DescriptorKind::Score:
    case DescriptorKind::Measure:
        return journal::numberOf(value);
    default:
        return {};
    }
}

double onItsScale(const descriptors::Descriptor& known, double number) {
    if (known.kind != descriptors::DescriptorKind::Stage) {
        return number;
    }
    const auto step = descriptors::stageStep(static_cast<std::int64_t>(number));
    return step ? static_cast<double>(*step) : number;
}

} // namespace bullace::vineyard
