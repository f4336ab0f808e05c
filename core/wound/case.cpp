#include "core/wound/case.h"

namespace drapewright::wound {

const supplies::StockList& stock_of(const Case& value) {
  return value.supplies ? *value.supplies : supplies::built_in_catalogue();
}

}  // namespace drapewright::wound
