-- An age group holds ages that somebody may have on the day; where groups go by the age on
-- the day it is the group of all these ages, else they may be up to two years off.
with
    age_span as (
        select g.sex, g.first_age, max(g.age) as last_age
        from insight.age_group g
        group by g.sex, g.first_age
    ),
    rule as (
        select coalesce(max(value) filter (name = 'age groups'), 'day') = 'day' as by_day from main.state
    )
select r.line_no, r.age_low, r.age_high, r.group_age
from record.result r
cross join rule
left join insight.age_group lo on lo.age = r.age_low and lo.sex = r.sex
left join insight.age_group hi on hi.age = r.age_high and hi.sex = r.sex
left join age_span g on g.first_age = r.group_age and g.sex = r.sex
where case
    when rule.by_day then r.group_age is distinct from case when lo.first_age = hi.first_age then lo.first_age end
    else r.group_age is not null and (r.age_low is null or g.first_age is null or g.last_age < r.age_low::integer - 2 or g.first_age > r.age_high::integer + 2)
end
