"""A Dask cluster gives what one process gives: a LocalCluster of two workers on loopback."""

from __future__ import annotations

import pytest

from buildplan.fitting.workers import NoClusterError, each, working

distributed = pytest.importorskip("distributed")


@pytest.mark.filterwarnings("ignore")
def test_a_cluster_of_two_answers_in_order() -> None:
    with (
        distributed.LocalCluster(
            n_workers=2,
            threads_per_worker=1,
            processes=False,
            host="127.0.0.1",
            protocol="tcp",
            dashboard_address=None,
        ) as local,
        working(cluster=local.scheduler_address),
    ):
        assert each(divmod_of_ten, range(12)) == [divmod(n, 10) for n in range(12)]


def divmod_of_ten(number: int) -> tuple[int, int]:
    return divmod(number, 10)


@pytest.mark.filterwarnings("ignore")
def test_an_address_where_nothing_listens_is_told() -> None:
    with pytest.raises(NoClusterError), working(cluster="no-such-scheme://127.0.0.1:1"):
        pass
