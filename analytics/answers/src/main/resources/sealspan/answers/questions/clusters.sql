-- title: Where and when did fouling cluster?
-- asked by: utility engineer, analyst
-- left out: failures whose mechanism was not recorded and that did not pass after cleaning alone: they could not be classified
-- caution: Looking back over all places and times, the p-value allows for the search; it says nothing of the cause.
-- caution: A cluster may be a tester, a maker or a batch of parts as well as the water: see 'ask cluster --number N'.
-- caution: The ends of a cluster in place and time are uncertain, and the size of the first one is too large on average.
select number, printf('%.5f, %.5f', latitude, longitude) as centre, radius_km, first_day, last_day,
  sites, visits, cases, expected, relative_risk, p, lower(replace(p_made_by, '_', ' ')) as p_made_by,
  significant
from fouling_cluster
order by number
-- in words
select case
  when not exists (from fouling_fit) then 'No fit has been made yet.'
  when not exists (from fouling_scan) then coalesce((select because from fouling_fit), 'No scan was made.')
  when (select because from fouling_scan) is not null then
    upper((select because from fouling_scan)[1]) || (select because from fouling_scan)[2:] || '.'
  when not exists (from fouling_cluster where significant) then
    'Fouling does not cluster beyond chance: the most likely cluster has p = '
    || (select round(p, 3) from fouling_cluster where number = 1) || '.'
  else (select count(*) from fouling_cluster where significant)
    || case when (select count(*) from fouling_cluster where significant) = 1
      then ' cluster is' else ' clusters are' end
    || ' beyond chance (p at most 0.05)'
    || case when exists (from fouling_cluster where not significant)
      then '; the last one shown is not.' else '.' end end
union all
select '  ' || number || ': ' || cases || ' visits with a fouling failure where ' || round(expected, 1)
  || ' were expected, at ' || sites || ' sites within ' || round(radius_km, 1) || ' km, '
  || first_day || ' to ' || last_day
  || coalesce(': ' || round(relative_risk, 1) || ' times the risk elsewhere', ': all there were')
from fouling_cluster where significant
-- beneath
select 'n = ' || s.visits || ' site visits with coordinates, ' || s.fouling_visits || ' with a fouling failure, at '
  || s.sites || ' sites, ' || s.first_day || ' to ' || s.last_day || '; left out: ' || s.visits_without_place
  || ' visits (' || s.fouling_visits_without_place || ' with fouling) to ' || s.sites_without_place
  || ' sites without coordinates' || coalesce(' (' || s.names_without_place
  || case when s.sites_without_place > 10 then ', ...' else '' end || ')', '')
  || ', ' || f.unclassified_visits || ' visits with a failure that could not be classified'
from fouling_scan s, fouling_fit f
union all
select 'What counts: ' || rule || ' Of ' || failed_rounds || ' failed rounds ' || fouling_rounds
  || ' were by fouling, and ' || unclassified_rounds
  || coalesce(' (' || round(100 * unclassified_rounds / nullif(failed_rounds, 0), 0)::int || ' %)', '')
  || ' could not be classified.'
from fouling_fit
union all
select 'Expected: the probability of each visit to find fouling, by ' || case method
    when 'REGRESSION' then 'time since the last pass, number of assemblies, type and season'
    else 'one rate for all (' || fouling_fit.because || ')' end
  || ', without any effect of place; within ' || strata
  || ' strata of season and type the number of cases is taken as given, so a route of tests is no cluster.'
from fouling_fit, fouling_scan
union all
select 'Looked at: circles of up to ' || round(100 * largest_share)::int || ' % of what is expected about '
  || places || ' places' || case when places < sites
    then ' (neighbouring sites put together, up to ' || round(place_radius_km, 2) || ' km)' else '' end
  || ', times of up to ' || longest_window_months || ' months in steps of ' || period_months
  || ', and the whole time: ' || cylinders || ' in all, with at least one case expected in each.'
from fouling_scan
union all
select 'p: share of ' || replicates || ' replicates (seed ' || seed
  || ') with a score as large anywhere; Gumbel extrapolated: from the tail of their scores, where no replicate was as large. Each cluster is looked for after those before it were taken out.'
from fouling_scan
union all
select 'Fitted on events recorded up to ' || newest_recorded_at || ' UTC, by version ' || code_version || '.'
from fouling_fit
