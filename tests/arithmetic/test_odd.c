/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include "../../lib/arithmetic/odd.h"

static struct oc_odd of(const struct oc_member *members, size_t count) {
  return oc_odd_of(members, count, 0.95);
}

START_TEST(an_error_of_the_air_common_to_all_is_eliminated)
{
  for (double air_k = -20; air_k <= 20; air_k += 5) {
    struct oc_member members[] = {
        {0.9 * air_k, 1, 0.9, 0}, {air_k, 1, 1, 0}, {0.95 * air_k, 1, 0.95, 0}};
    struct oc_odd odd = of(members, 3);
    CHECK_NEAR(odd.chi_square, 0, 1e-9);
    CHECK_NEAR(odd.probability, 1, 1e-9);
    ck_assert(odd.agree && odd.odd == -1);
  }
}
END_TEST

START_TEST(chi_square_of_equal_members_is_that_about_their_mean)
{
  struct oc_member members[] = {{1, 2, 1, 0}, {-1, 2, 1, 0}, {3, 2, 1, 0}};
  /* mean 1, squares 0 + 4 + 4 over 4; exp(-1) at two degrees */
  struct oc_odd odd = of(members, 3);
  CHECK_NEAR(odd.chi_square, 2, 1e-12);
  CHECK_NEAR(odd.probability, 0.36787944117144233, 1e-12);
}
END_TEST

START_TEST(a_common_start_is_one_normal_error)
{
  /* Alone of unit noise and unit start: off^2/(1 + 1). No share of the air. */
  struct oc_member members[] = {{3, 1, 0, 1}, {0, 1, 0, 0}};
  CHECK_NEAR(of(members, 2).chi_square, 4.5, 1e-12);
  /* Both by the same start: covariance 2 1 1 2, inverse (2 -1 -1 2)/3. */
  struct oc_member both[] = {{3, 1, 0, 1}, {3, 1, 0, 1}};
  CHECK_NEAR(of(both, 2).chi_square, 6, 1e-12);
}
END_TEST

START_TEST(the_one_without_which_the_others_agree_is_odd)
{
  for (int at = 0; at < 4; at++) {
    struct oc_member members[] = {{0.3, 1, 1, 0}, {-0.5, 1, 1, 0}, {0.1, 1, 1, 0}, {0.4, 1, 1, 0}};
    members[at].off_k = -9;
    struct oc_odd odd = of(members, 4);
    ck_assert(!odd.agree);
    ck_assert_int_eq(odd.odd, at);
    CHECK_NEAR(odd.off_k, -9, 0.6);
  }
}
END_TEST

START_TEST(of_two_none_is_odd)
{
  struct oc_member members[] = {{0, 1, 1, 0}, {30, 1, 1, 0}};
  struct oc_odd odd = of(members, 2);
  ck_assert(!odd.agree);
  ck_assert_int_eq(odd.odd, -1);
  ck_assert(isnan(odd.off_k));
}
END_TEST

START_TEST(where_removing_either_of_two_restores_none_is_odd)
{
  struct oc_member members[] = {{-4, 1, 1, 0}, {0, 5, 1, 0}, {4, 1, 1, 0}};
  struct oc_odd odd = of(members, 3);
  ck_assert(!odd.agree);
  ck_assert_int_eq(odd.odd, -1);
}
END_TEST

START_TEST(where_no_one_restores_none_is_odd)
{
  struct oc_member members[] = {{-20, 1, 1, 0}, {0, 1, 1, 0}, {20, 1, 1, 0}};
  ck_assert_int_eq(of(members, 3).odd, -1);
}
END_TEST

START_TEST(the_order_of_members_does_not_matter)
{
  struct oc_member members[] = {{0.3, 1, 0.8, 0.5}, {-9, 2, 1, 0}, {0.1, 0.7, 0.9, 0.4}};
  struct oc_odd one = of(members, 3);
  struct oc_member turned[] = {members[2], members[0], members[1]};
  struct oc_odd other = of(turned, 3);
  CHECK_NEAR(other.chi_square, one.chi_square, 1e-12);
  ck_assert_int_eq(one.odd, 1);
  ck_assert_int_eq(other.odd, 2);
}
END_TEST

START_TEST(what_is_exact_is_taken_as_very_well_known)
{
  struct oc_member members[] = {{0, 0, 1, 0}, {0, 0, 1, 0}, {1, 0, 1, 0}};
  struct oc_odd odd = of(members, 3);
  ck_assert(isfinite(odd.chi_square) && !odd.agree);
  ck_assert_int_eq(odd.odd, 2);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "odd", an_error_of_the_air_common_to_all_is_eliminated,
      chi_square_of_equal_members_is_that_about_their_mean, a_common_start_is_one_normal_error,
      the_one_without_which_the_others_agree_is_odd, of_two_none_is_odd,
      where_removing_either_of_two_restores_none_is_odd, where_no_one_restores_none_is_odd,
      the_order_of_members_does_not_matter, what_is_exact_is_taken_as_very_well_known);
}
