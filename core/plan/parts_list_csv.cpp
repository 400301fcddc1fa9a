#include "core/plan/parts_list.h"

#include <string_view>

namespace hither {
namespace {

/// Characters with which a spreadsheet may start a formula; the last four are their full-width forms.
bool startsFormula(std::string_view text) {
    if (text.empty()) return false;
    if (std::string_view("=+-@\t\r\n").find(text.front()) != std::string_view::npos) return true;
    for (const std::string_view wide : {"\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D", "\xEF\xBC\xA0"}) if (text.substr(0, wide.size()) == wide) return true;
    return false;
}

std::string joined(const std::vector<std::string>& items) {
    std::string text;
    for (const std::string& item : items) text += (text.empty() ? "" : ", ") + item;
    return text;
}

}  // namespace

std::string csvText(const std::string& text) {
    std::string out;
    bool cellMayStart = true;  // here, for a program that splits at other characters than the comma, or ignores the quotes
    bool quote = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (cellMayStart && startsFormula(std::string_view(text).substr(i))) out += '\'';
        quote = quote || c == '"' || c == ',' || c == '\r' || c == '\n' || c == ';' || c == '\t';
        if (c == '"') out += '"';
        out += c;
        // Spaces and quotes after a separator leave the next character at the start of a cell.
        cellMayStart = c == ',' || c == ';' || c == '\t' || c == '|' || c == '\r' || c == '\n' || (cellMayStart && (c == ' ' || c == '"'));
    }
    return quote ? '"' + out + '"' : out;
}

std::string partsListCsv(const PartsList& list) {
    std::string csv = "item,name,kind,count,price_each,line_total,currency,price_basis,price_source,tools,used_in,where_to_buy,notes\r\n";
    for (const PartsRow& row : list.rows) {
        csv += csvText(row.id) + ',' + csvText(row.name) + ',' + (row.kind ? word(*row.kind) : "extra item") + ',' + std::to_string(row.count) + ',';
        csv += (row.each ? printAmount(*row.each) : "") + ',' + (row.total ? printAmount(*row.total) : "") + ',' + (row.each ? csvText(row.each->currency) : "") + ',';
        csv += std::string(word(row.priceBasis.kind)) + ',' + csvText(row.priceBasis.source) + ',' + csvText(joined(row.tools)) + ',' + csvText(joined(row.usedIn)) + ',';
        csv += csvText(row.whereToBuy) + ',' + csvText(row.notes) + "\r\n";
    }
    for (const Money& total : list.totals) {
        csv += ",total,,,," + printAmount(total) + ',' + csvText(total.currency) + ',' + word(list.priceBasis) + ",,,,,";
        csv += csvText(list.notPriced.empty() ? "" : "without a price: " + joined(list.notPriced)) + "\r\n";
    }
    return csv;
}

}  // namespace hither
