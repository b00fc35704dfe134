-- One row: what else the last full linking found out that later lines are
-- weighed by (weights, births, courses, clubs, the level of every run).
-- value: see keptLinkage in pipeline/link_known.go
select null::blob as value
