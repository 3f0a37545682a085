import { storeContract } from './contract.ts';

storeContract('the store on the PostgreSQL of the package');
