#pragma once
#include <random>
#include <string>

#include <nlohmann/json.hpp>

/// Random but valid parts in their JSON form, for tests of reading and turning. Fixed seeds only.
namespace hither::test {

class RandomParts {
public:
    explicit RandomParts(unsigned seed) : random_(seed) {}

    /// With every kind of element; reversible parts have one base and nothing to keep free.
    nlohmann::json part(bool reversible);
    double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(random_); }
    int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }
    bool chance(double share) { return between(0, 1) < share; }
    std::mt19937& engine() { return random_; }

private:
    /// Decimals as people type them, now and then with all digits.
    double typed(double low, double high);
    nlohmann::json point(double reach);
    nlohmann::json axis();
    nlohmann::json figure(double low, double high);
    nlohmann::json solid();
    nlohmann::json element(const std::string& kind, const std::string& name);
    nlohmann::json port(bool male);
    nlohmann::json grip();
    void maybe(nlohmann::json& object, const char* key, nlohmann::json value) { if (chance(0.7)) object[key] = std::move(value); }

    std::mt19937 random_;
};

}  // namespace hither::test
