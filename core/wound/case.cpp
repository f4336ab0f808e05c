#include "core/wound/case.h"

namespace drapewright::wound {

const practice::BodySite* site_of(const Case& value) {
  if (!value.body_site_id.empty()) return practice::find_body_site(value.body_site_id);
  const auto named = practice::body_sites_named(value.body_site);
  return named.empty() ? nullptr : named.front();
}

const supplies::StockList& stock_of(const Case& value) {
  return value.supplies ? *value.supplies : supplies::built_in_catalogue();
}

}  // namespace drapewright::wound
