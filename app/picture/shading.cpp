#include "app/picture/shading.h"

#include <algorithm>
#include <cmath>

namespace hither {

namespace {

constexpr float ownTint = 190;  // the tint that is the look's own colour

double toLinear(double v) { return std::pow(v, 2.2); }
double fromLinear(double v) { return std::pow(v, 1 / 2.2); }

}  // namespace

std::uint32_t premultiplied(const QColor& colour, double opacity) {
    const double a = colour.alphaF() * opacity;
    const auto part = [](double v) { return static_cast<std::uint32_t>(std::lround(255 * std::clamp(v, 0.0, 1.0))); };
    return part(a) << 24 | part(a * colour.redF()) << 16 | part(a * colour.greenF()) << 8 | part(a * colour.blueF());
}

Tints tintsOf(const QColor& base, double opacity) {
    Tints tints{};
    const double own[] = {toLinear(base.redF()), toLinear(base.greenF()), toLinear(base.blueF())};
    for (std::size_t i = 0; i < tints.size(); ++i) {
        double mixed[3];
        const double shade = static_cast<double>(i) / static_cast<double>(ownTint), white = std::clamp(shade - 1, 0.0, 1.0);
        for (int k = 0; k < 3; ++k) mixed[k] = fromLinear(std::min(1.0, own[k] * std::min(shade, 1.0) + white * (1 - own[k])));
        tints[i] = premultiplied(QColor::fromRgbF(static_cast<float>(mixed[0]), static_cast<float>(mixed[1]), static_cast<float>(mixed[2])), opacity);
    }
    return tints;
}

Vec3 Lighting::toward() { return Vec3(0.30, 0.26, 0.92).normalized(); }

Lighting::Lighting(const Vec3& eye_W)
    : eye_W_(eye_W.cast<float>()), key_(Vec3(0.42, 0.38, 0.82).normalized().cast<float>()), fill_(Vec3(-0.5, -0.75, 0.25).normalized().cast<float>()) {}

float Lighting::light(const Eigen::Vector3f& normal_W, const Eigen::Vector3f& point_W, float gloss) const {
    const Eigen::Vector3f toEye = (eye_W_ - point_W).normalized();
    const float sky = 0.5F + 0.5F * normal_W.z();
    const float key = std::max(0.0F, normal_W.dot(key_)), fill = std::max(0.0F, normal_W.dot(fill_)), head = std::max(0.0F, normal_W.dot(toEye));
    float light = 0.24F + 0.24F * sky + 0.40F * key + 0.10F * fill + 0.16F * head;
    if (gloss > 0) {
        float s = std::max(0.0F, normal_W.dot((toEye + key_).normalized()));
        s *= s; s *= s; s *= s; s *= s; s *= s;  // to the 32nd
        light += 0.34F * gloss * s;
    }
    return ownTint * light;
}

float glossOf(Look look) {
    switch (look) {
        case Look::frameTube: case Look::metal: return 0.7F;
        case Look::gripPart: case Look::armPart: case Look::adapterPart: case Look::thread: case Look::switchCap: return 0.9F;
        case Look::neckPart: case Look::knob: case Look::switchCase: case Look::wheel: case Look::jointHandle: case Look::outletHandle: return 0.5F;
        case Look::wood: return 0.12F;
        default: return 0;
    }
}

}  // namespace hither
