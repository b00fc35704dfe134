-- The evidence on a doubtful pair adds up to the pair's weight (which is
-- rounded to 1/256 bit).
select p.pair, p.bits, sum(e.bits) as together
from record.doubtful_pair p
left join record.evidence e on e.pair = p.pair
group by p.pair, p.bits
having coalesce(abs(sum(e.bits) - p.bits) > 1.0 / 256, true)
